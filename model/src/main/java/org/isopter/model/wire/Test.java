package org.isopter.model.wire;

import java.math.BigDecimal;
import java.util.List;

/**
 * A test on an element: the part of FHIRPath that our rules need. As there, a comparison with
 * nothing is neither true nor false, and what is not true in the end is broken.
 *
 * <p>Closed: {@code fold} makes every reader answer for every kind.
 */
public sealed interface Test {

  /** The path leads to something. */
  record Exists(ElementPath path) implements Test {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.exists(this);
    }
  }

  /** The path leads to nothing. */
  record Missing(ElementPath path) implements Test {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.missing(this);
    }
  }

  /** All that the path leads to passes a test; nothing does. */
  record Every(ElementPath path, Test test) implements Test {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.every(this);
    }
  }

  /** All tests are passed. */
  record And(List<Test> tests) implements Test {
    public And {
      tests = List.copyOf(tests);
    }

    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.and(this);
    }
  }

  /** One of the tests is passed. */
  record Or(List<Test> tests) implements Test {
    public Or {
      tests = List.copyOf(tests);
    }

    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.or(this);
    }
  }

  /** Where one test is passed, another is. */
  record Implies(Test when, Test then) implements Test {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.implies(this);
    }
  }

  /** Two tests come out the same, or differently. */
  record Same(Test first, Test second, boolean same) implements Test {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.same(this);
    }
  }

  /** A test in parentheses: some engines of FHIRPath need them where the language does not. */
  record Group(Test test) implements Test {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.group(this);
    }
  }

  /** The path leads to this text. */
  record Is(ElementPath path, String text) implements Test {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.is(this);
    }
  }

  /** The path leads to a number of at least this. */
  record AtLeast(ElementPath path, BigDecimal limit) implements Test {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.atLeast(this);
    }
  }

  /** The path leads to a number of at most this. */
  record AtMost(ElementPath path, BigDecimal limit) implements Test {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.atMost(this);
    }
  }

  /** The number at one path is not above that at another. */
  record NotAbove(ElementPath path, ElementPath limit) implements Test {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.notAbove(this);
    }
  }

  /** The element is a number written with at most so many digits behind the point. */
  record Decimals(int most) implements Test {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.decimals(this);
    }
  }

  /** Answers for the kind that this test is. */
  <R> R fold(Cases<R> cases);

  /**
   * One answer for each kind of test.
   *
   * @param <R> the type of the answers
   */
  interface Cases<R> {
    /** Answers for what must be there. */
    R exists(Exists test);

    /** Answers for what must not be there. */
    R missing(Missing test);

    /** Answers for a test of all that a path leads to. */
    R every(Every test);

    /** Answers for tests that must all be passed. */
    R and(And test);

    /** Answers for tests of which one must be passed. */
    R or(Or test);

    /** Answers for a test that another brings with it. */
    R implies(Implies test);

    /** Answers for two tests that come out the same or not. */
    R same(Same test);

    /** Answers for parentheses. */
    R group(Group test);

    /** Answers for a text. */
    R is(Is test);

    /** Answers for a least number. */
    R atLeast(AtLeast test);

    /** Answers for a greatest number. */
    R atMost(AtMost test);

    /** Answers for two numbers in order. */
    R notAbove(NotAbove test);

    /** Answers for the digits behind the point. */
    R decimals(Decimals test);
  }
}
