package org.isopter.mapper.foreign.ledger;

import java.util.Locale;

/** The reasons for which a resource, or something in it, is kept as it came. */
public enum Why {
  NO_RESOURCE("It is no FHIR resource."),
  UNREADABLE("It is no well-formed document within the limits."),
  OTHER_RESOURCE("It holds no observation; it is used where others refer to it."),
  OBSERVATIONS_INSIDE(
      "It holds observations inside itself, which are not read; sent on their own, they are."),
  FORM_UNKNOWN(
      "It answers a form whose questions are not read together with it; where they are, it is read."),
  ORDER("It is an order for glasses or lenses: what is to be made, not what was measured."),
  MODIFIED("A modifier element may turn its meaning round."),
  RETRACTED("Its status does not say that it holds, or it was deleted."),
  UNKNOWN_CODE("None of its codes is that of a finding of the catalogue."),
  PANEL("It only names other observations, which are read as themselves."),
  CODES_DISAGREE("Its codes name different findings."),
  UNREAD_QUALIFIER("Something beside its value is not understood and may change what it means."),
  NO_SIDE("It does not say which eye."),
  SIDES_DISAGREE("It names one eye in one place and another in another."),
  NOT_AN_EYE("Its body site is none that is known as an eye."),
  NO_VALUE("It has neither a value nor a reason why there is none."),
  VALUE_UNFIT("Its value does not fit the finding."),
  UNIT_NOT_STATED("Its number has no unit, or one that is not known."),
  UNITS_DISAGREE("Its unit and the code of its unit differ."),
  NOTATION_NOT_STATED("Its number does not say in which notation it is."),
  PART_UNFIT("A part of its value does not fit, and the rest would say something else without it."),
  PART_APART("It is a part of a measurement that was not put together with its other parts."),
  NO_TIME("It does not say when, to the day at least."),
  NO_PERSON("It is not about a person, or about another than the person examined."),
  JOINED("It gave a part to a measurement that was put together, and goes along beside it."),
  DUPLICATE("It says again what another resource of the input says."),
  REPLACED("A later version of it is in the input."),
  NOT_LISTED(
      "Its examination is in the input and does not name it: it is no longer part of the record."),
  VERSIONS_UNDECIDED("Two versions of it are in the input and neither is said to be the later.");

  /** What is seen of a resource that was kept when it was read before. */
  public static final String KEPT_BEFORE = "kept before";

  private final String words;
  private final String word = name().toLowerCase(Locale.ROOT).replace('_', '-');

  Why(String words) {
    this.words = words;
  }

  /** Returns the reason that a word names; any other word is of a resource that was not read. */
  public static Why of(String word) {
    for (Why why : values()) {
      if (why.word().equals(word)) {
        return why;
      }
    }
    return OTHER_RESOURCE;
  }

  /** Returns the word that reports use, in lower case with hyphens. */
  public String word() {
    return word;
  }

  /**
   * Says whether a message may quote what was seen: codes, units and references, but no value that
   * was measured and no time.
   */
  boolean quotes() {
    return switch (this) {
      case NO_VALUE, VALUE_UNFIT, PART_UNFIT, NOTATION_NOT_STATED, UNIT_NOT_STATED, NO_TIME ->
          false;
      default -> true;
    };
  }

  /** Returns true if a number was read, and only its unit or its notation was missing. */
  public boolean isOfNumber() {
    return this == UNIT_NOT_STATED || this == NOTATION_NOT_STATED;
  }

  /** Returns the reason in a sentence. */
  public String words() {
    return words;
  }
}
