package org.isopter.model.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What a profile says of an element: of the whole resource, of a member, or of a slice.
 *
 * @param name the name of the member as the standard defines it, for instance {@code value[x]}; of
 *     a slice, the name of the slice
 * @param min how many there must be at least; {@link #AS_BASE} where the profile does not say
 * @param max how many there may be at most; {@link #AS_BASE} where the profile does not say
 * @param conditions what each of them must keep
 * @param children what is said of its members, in the order of the standard
 * @param slicing how its occurrences are told apart, where they are
 * @param supported whether whoever writes it has to fill it where there is something to say, and
 *     whoever reads it has to take it or to say that it was not taken
 */
public record Element(
    String name,
    int min,
    int max,
    List<Condition> conditions,
    List<Element> children,
    Optional<Slicing> slicing,
    boolean supported) {

  /** As many as the profile from which this one derives allows. */
  public static final int AS_BASE = -1;

  public Element {
    conditions = List.copyOf(conditions);
    children = List.copyOf(children);
  }

  /** Returns an element of which nothing is said. */
  public static Element of(String name) {
    return new Element(name, AS_BASE, AS_BASE, List.of(), List.of(), Optional.empty(), false);
  }

  /** Returns an element that must be there once. */
  public static Element once(String name) {
    return of(name).occurs(1, 1);
  }

  /** Returns an element that may not be there. */
  public static Element none(String name) {
    return of(name).occurs(AS_BASE, 0);
  }

  /** Returns this element with limits on how often it is there. */
  public Element occurs(int least, int most) {
    return new Element(name, least, most, conditions, children, slicing, supported);
  }

  /** Returns this element with further conditions. */
  public Element with(Condition... more) {
    return withAll(Arrays.asList(more));
  }

  /** Returns this element with further conditions. */
  public Element withAll(List<? extends Condition> more) {
    List<Condition> all = new ArrayList<>(conditions);
    all.addAll(more);
    return new Element(name, min, max, all, children, slicing, supported);
  }

  /** Returns this element with further members. */
  public Element holding(List<Element> more) {
    List<Element> all = new ArrayList<>(children);
    all.addAll(more);
    return new Element(name, min, max, conditions, all, slicing, supported);
  }

  /** Returns this element with further members. */
  public Element holding(Element... more) {
    return holding(Arrays.asList(more));
  }

  /** Returns this element with its occurrences told apart. */
  public Element sliced(Slicing how) {
    return new Element(name, min, max, conditions, children, Optional.of(how), supported);
  }

  /** Returns this element as one that has to be supported. */
  public Element support() {
    return new Element(name, min, max, conditions, children, slicing, true);
  }

  /** Says whether a profile states anything of the element itself, apart from its members. */
  public boolean isStated() {
    return supported
        || min != AS_BASE
        || max != AS_BASE
        || !conditions.isEmpty()
        || slicing.isPresent();
  }

  /** Returns the conditions of a kind. */
  public <C extends Condition> List<C> conditions(Class<C> kind) {
    return conditions.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  /** Returns the rules on the element and on all below it. */
  public List<Condition.Rule> rules() {
    List<Condition.Rule> rules = new ArrayList<>(conditions(Condition.Rule.class));
    children.forEach(child -> rules.addAll(child.rules()));
    slicing.ifPresent(how -> how.slices().forEach(slice -> rules.addAll(slice.rules())));
    return List.copyOf(rules);
  }
}
