package org.isopter.model.finding;

import java.util.List;
import org.isopter.model.value.Unit;

/**
 * What a single value may be, in first-order form.
 *
 * <p>Everything that is not the value itself reads this: the FHIR writer and reader, the profiles,
 * the record schema, the table columns, the documentation, and the generator of random samples.
 */
public sealed interface Spec {

  /**
   * A number in one of a few units, each with its span.
   *
   * @param spans one span per unit, the usual unit first
   * @param decimals the most digits behind the point
   */
  record Measure(List<Span> spans, int decimals) implements Spec {
    public Measure {
      spans = List.copyOf(spans);
    }

    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.measure(this);
    }
  }

  /** A whole number, both ends included. */
  record Count(int least, int most) implements Spec {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.count(this);
    }
  }

  /** One of a closed list of answers. */
  record Coded(Answers answers) implements Spec {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.coded(this);
    }
  }

  /** Yes or no. */
  record Truth() implements Spec {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.truth(this);
    }
  }

  /** Free text of at most so many characters, not blank. */
  record Text(int longest) implements Spec {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.text(this);
    }
  }

  /**
   * Two positive numbers of one unit.
   *
   * @param unit the unit of both
   * @param numerator what the numerator may be
   * @param denominator what the denominator may be
   * @param decimals the most digits behind either point
   * @param proper whether the numerator may not exceed the denominator
   */
  record Ratio(Unit unit, Span numerator, Span denominator, int decimals, boolean proper)
      implements Spec {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.ratio(this);
    }
  }

  /** Answers for the kind that this spec is. */
  <R> R fold(Cases<R> cases);

  /**
   * One answer per kind of spec; a new kind does not compile until every reader has an answer.
   *
   * @param <R> the type of the answers
   */
  interface Cases<R> {
    /** Answers for a number with a unit. */
    R measure(Measure spec);

    /** Answers for a whole number. */
    R count(Count spec);

    /** Answers for one of a list. */
    R coded(Coded spec);

    /** Answers for yes or no. */
    R truth(Truth spec);

    /** Answers for free text. */
    R text(Text spec);

    /** Answers for two numbers of one unit. */
    R ratio(Ratio spec);
  }
}
