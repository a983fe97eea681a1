package org.isopter.model.note.grammar;

import org.isopter.model.note.token.Matcher;

/**
 * A typed place in an item for one thing that may be said.
 *
 * @param name what it is called in a message
 * @param role whether it belongs to an eye or to the item
 * @param matcher how it is read
 * @param <T> what it holds
 */
public record Slot<T>(String name, Role role, Matcher<T> matcher) {

  enum Role {
    /** Said of an eye, once. */
    VALUE,
    /** Said of an eye, as often as it takes. */
    VALUES,
    /** Said of an eye, once; behind the last eye it may be meant for both. */
    VALUE_OR_SHARED,
    /** The same, and named for both it is each eye's: an addition. */
    VALUE_OF_EACH,
    /** Said of the two eyes together, once, even where each of them is named. */
    VALUE_OF_PAIR,
    /** Said of the item or of every eye: how, in what light, at what distance. */
    CONDITION
  }

  /** Returns a slot for one value of one eye. */
  public static <T> Slot<T> value(String name, Matcher<T> matcher) {
    return new Slot<>(name, Role.VALUE, matcher);
  }

  /** Returns a slot for one value, which behind the last eye may be meant for both. */
  public static <T> Slot<T> valueOrShared(String name, Matcher<T> matcher) {
    return new Slot<>(name, Role.VALUE_OR_SHARED, matcher);
  }

  /** Returns a slot for one value, which named for both eyes is that of each. */
  public static <T> Slot<T> valueOfEach(String name, Matcher<T> matcher) {
    return new Slot<>(name, Role.VALUE_OF_EACH, matcher);
  }

  /** Returns a slot for one value of the two eyes together. */
  public static <T> Slot<T> valueOfPair(String name, Matcher<T> matcher) {
    return new Slot<>(name, Role.VALUE_OF_PAIR, matcher);
  }

  /** Says whether it may be meant for both eyes behind the last of them. */
  boolean mayBeShared() {
    return role == Role.VALUE_OR_SHARED || role == Role.VALUE_OF_EACH;
  }

  /** Returns a slot for any number of values of one eye. */
  public static <T> Slot<T> values(String name, Matcher<T> matcher) {
    return new Slot<>(name, Role.VALUES, matcher);
  }

  /** Returns a slot for how something was tested; it holds until another is stated. */
  public static <T> Slot<T> condition(String name, Matcher<T> matcher) {
    return new Slot<>(name, Role.CONDITION, matcher);
  }

  /** Says whether it holds how something was tested, not what was found. */
  public boolean isCondition() {
    return role == Role.CONDITION;
  }
}
