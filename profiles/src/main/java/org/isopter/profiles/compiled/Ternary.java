package org.isopter.profiles.compiled;

/** The three values of FHIRPath's logic: true, false, and nothing. */
enum Ternary {
  YES,
  NO,
  NOTHING;

  static Ternary of(boolean holds) {
    return holds ? YES : NO;
  }

  /** Both hold; section 6.5.1 of FHIRPath 2.0.0. */
  Ternary and(Ternary other) {
    if (this == NO || other == NO) {
      return NO;
    }
    return this == YES && other == YES ? YES : NOTHING;
  }

  /** One of both holds; section 6.5.2. */
  Ternary or(Ternary other) {
    if (this == YES || other == YES) {
      return YES;
    }
    return this == NO && other == NO ? NO : NOTHING;
  }

  /** The other holds where this one does; section 6.5.5. */
  Ternary implies(Ternary other) {
    return not().or(other);
  }

  private Ternary not() {
    return switch (this) {
      case YES -> NO;
      case NO -> YES;
      case NOTHING -> NOTHING;
    };
  }
}
