package org.isopter.model.wire;

import java.util.Arrays;
import java.util.List;
import org.isopter.model.value.Code;

/**
 * What an occurrence of an element must keep. Closed: {@code fold} makes every reader answer for
 * every kind.
 */
public sealed interface Condition {

  /** It holds at least what the pattern holds. */
  record Pattern(Fixed fixed) implements Condition {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.pattern(this);
    }
  }

  /**
   * It has one of the codes of a value set; codes of others may stand beside it.
   *
   * @param valueSet the id of the value set
   * @param codes its codes
   * @param extensible whether codes of others may stand in its place, where no code of the value
   *     set says what is meant
   */
  record Bound(String valueSet, List<Code> codes, boolean extensible) implements Condition {
    public Bound {
      codes = List.copyOf(codes);
    }

    /** Returns a condition without which the element cannot be understood. */
    static Bound required(String valueSet, List<Code> codes) {
      return new Bound(valueSet, codes, false);
    }

    /** Returns this condition where the value set has not all that a place may need. */
    Bound orOthers() {
      return new Bound(valueSet, codes, true);
    }

    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.bound(this);
    }
  }

  /**
   * It has one of the types.
   *
   * @param types names of types of FHIR, for instance {@code Quantity}
   */
  record OneOfTypes(List<String> types) implements Condition {
    public OneOfTypes {
      types = List.copyOf(types);
    }

    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.oneOfTypes(this);
    }
  }

  /** It is a text of at most so many characters. */
  record Longest(int characters) implements Condition {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.longest(this);
    }
  }

  /**
   * It passes a test that looks at more than one element, or at a number.
   *
   * @param key its stable name, unique over all profiles
   * @param human what is wanted, in one sentence
   * @param test the test, on the element that has the condition
   * @param seen the paths, from the same element, of what a message must show beside the sentence
   */
  record Rule(String key, String human, Test test, List<ElementPath> seen) implements Condition {

    private static final int LONGEST_KEY = 64;

    public Rule {
      seen = List.copyOf(seen);
      if (!key.matches("[A-Za-z0-9.-]+") || key.length() > LONGEST_KEY) {
        throw new IllegalArgumentException(key + " cannot be the key of an invariant");
      }
    }

    /** Returns a rule. */
    public static Rule of(String key, String human, Test test, ElementPath... seen) {
      return new Rule(key, human, test, Arrays.asList(seen));
    }

    /** Returns the test as FHIRPath. */
    public String expression() {
      return FhirPath.of(test);
    }

    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.rule(this);
    }
  }

  /** Answers for the kind that this condition is. */
  <R> R fold(Cases<R> cases);

  /**
   * One answer for each kind of condition.
   *
   * @param <R> the type of the answers
   */
  interface Cases<R> {
    /** Answers for a pattern. */
    R pattern(Pattern condition);

    /** Answers for a value set. */
    R bound(Bound condition);

    /** Answers for a choice of types. */
    R oneOfTypes(OneOfTypes condition);

    /** Answers for a limit on the length of a text. */
    R longest(Longest condition);

    /** Answers for a rule. */
    R rule(Rule condition);
  }
}
