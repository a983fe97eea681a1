package org.isopter.model.finding;

import java.math.BigDecimal;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Unit;

/**
 * A single value in first-order form: what every reader and writer handles.
 *
 * <p>Closed together with {@link Spec}: each kind of datum is described by the spec of that name.
 */
public sealed interface Datum {

  /** A number with a unit; the scale of the number is kept. */
  record Measure(BigDecimal value, Unit unit) implements Datum {
    public Measure {
      // 1E+2 and 100 are the same digits to a reader; only trailing decimals carry meaning.
      value = value.scale() < 0 ? value.setScale(0) : value;
    }

    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.measure(this);
    }
  }

  /** A whole number. */
  record Count(int value) implements Datum {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.count(this);
    }
  }

  /** One of a closed list of answers. */
  record Coded(Concept concept) implements Datum {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.coded(this);
    }
  }

  /** Yes or no. */
  record Truth(boolean value) implements Datum {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.truth(this);
    }
  }

  /** Free text. */
  record Text(String value) implements Datum {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.text(this);
    }
  }

  /** Two numbers of one unit, kept apart: 6/9 is not 0.667. */
  record Ratio(BigDecimal numerator, BigDecimal denominator, Unit unit) implements Datum {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.ratio(this);
    }
  }

  /** Answers for the kind that this datum is. */
  <R> R fold(Cases<R> cases);

  /**
   * One answer per kind of datum; a new kind does not compile until every reader has an answer.
   *
   * @param <R> the type of the answers
   */
  interface Cases<R> {
    /** Answers for a number with a unit. */
    R measure(Measure measure);

    /** Answers for a whole number. */
    R count(Count count);

    /** Answers for one of a list. */
    R coded(Coded coded);

    /** Answers for yes or no. */
    R truth(Truth truth);

    /** Answers for free text. */
    R text(Text text);

    /** Answers for two numbers of one unit. */
    R ratio(Ratio ratio);
  }
}
