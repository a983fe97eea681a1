package org.isopter.model.wire;

import java.util.ArrayList;
import java.util.List;

/**
 * A way from an element to others below it, step by step.
 *
 * @param steps the steps; none stays at the element
 */
public record ElementPath(List<Step> steps) {

  /** The element itself. */
  public static final ElementPath THIS = new ElementPath(List.of());

  /** A step from some elements to others. */
  public sealed interface Step {
    /** Answers for the kind that this step is. */
    <R> R fold(Steps<R> cases);
  }

  /** To the members of a name; {@code value} is the value of whatever type. */
  public record Child(String name) implements Step {
    @Override
    public <R> R fold(Steps<R> cases) {
      return cases.child(this);
    }
  }

  /** To those of a type. */
  public record OfType(String type) implements Step {
    @Override
    public <R> R fold(Steps<R> cases) {
      return cases.ofType(this);
    }
  }

  /** To those that pass a test. */
  public record Where(Test test) implements Step {
    @Override
    public <R> R fold(Steps<R> cases) {
      return cases.where(this);
    }
  }

  /**
   * One answer for each kind of step.
   *
   * @param <R> the type of the answers
   */
  public interface Steps<R> {
    /** Answers for a step to members. */
    R child(Child step);

    /** Answers for a step to those of a type. */
    R ofType(OfType step);

    /** Answers for a step to those that pass a test. */
    R where(Where step);
  }

  public ElementPath {
    steps = List.copyOf(steps);
  }

  /** Returns the path down these members. */
  public static ElementPath of(String... names) {
    ElementPath path = THIS;
    for (String name : names) {
      path = path.to(name);
    }
    return path;
  }

  /** Returns this path and then to the members of a name. */
  public ElementPath to(String name) {
    return then(new Child(name));
  }

  /** Returns this path and then to those of a type. */
  public ElementPath ofType(String type) {
    return then(new OfType(type));
  }

  /** Returns this path and then to those that pass a test. */
  public ElementPath where(Test test) {
    return then(new Where(test));
  }

  /** Returns the test that the path leads to something. */
  public Test exists() {
    return new Test.Exists(this);
  }

  /** Returns this path and then the other. */
  ElementPath then(ElementPath further) {
    ElementPath path = this;
    for (Step step : further.steps) {
      path = path.then(step);
    }
    return path;
  }

  private ElementPath then(Step step) {
    List<Step> all = new ArrayList<>(steps);
    all.add(step);
    return new ElementPath(all);
  }
}
