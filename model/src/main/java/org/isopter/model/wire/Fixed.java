package org.isopter.model.wire;

import org.isopter.model.value.Code;
import org.isopter.model.value.Unit;

/** The part of a value that is always the same. */
public sealed interface Fixed {

  /** System and code of a coding; its display is left to its code system. */
  record OfCoding(Code code) implements Fixed {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.coding(this);
    }
  }

  /** A concept with such a coding. */
  record OfConcept(Code code) implements Fixed {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.concept(this);
    }
  }

  /** The unit of a quantity: system and code; its text is free. */
  record OfQuantity(Unit unit) implements Fixed {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.quantity(this);
    }
  }

  /** The unit of both quantities of a ratio. */
  record OfRatio(Unit unit) implements Fixed {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.ratio(this);
    }
  }

  /** Answers for the kind that this is. */
  <R> R fold(Cases<R> cases);

  /**
   * One answer for each kind.
   *
   * @param <R> the type of the answers
   */
  interface Cases<R> {
    /** Answers for a coding. */
    R coding(OfCoding fixed);

    /** Answers for a concept. */
    R concept(OfConcept fixed);

    /** Answers for a quantity. */
    R quantity(OfQuantity fixed);

    /** Answers for a ratio. */
    R ratio(OfRatio fixed);
  }
}
