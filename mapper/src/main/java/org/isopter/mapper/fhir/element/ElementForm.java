package org.isopter.mapper.fhir.element;

import java.math.BigDecimal;
import org.isopter.mapper.json.token.JsonTokens;

/** What the value of an element may be asked to be. */
enum ElementForm {
  STRING("text"),
  LIST("a list"),
  NUMBER("a number"),
  INTEGER("a whole number"),
  TRUTH("true or false");

  private final String wanted;

  ElementForm(String wanted) {
    this.wanted = wanted;
  }

  /** Returns the same for people. */
  String wanted() {
    return wanted;
  }

  /** Says whether a value is of this form. */
  boolean fits(JsonTokens json, int value) {
    return switch (this) {
      case STRING -> json.isString(value);
      case LIST -> json.isList(value);
      case NUMBER -> json.isNumber(value);
      case INTEGER -> json.isNumber(value) && isWhole(json.text(value));
      case TRUTH -> json.isTruth(value);
    };
  }

  private static boolean isWhole(String number) {
    BigDecimal value = new BigDecimal(number);
    try {
      return value.compareTo(BigDecimal.valueOf(value.intValueExact())) == 0;
    } catch (ArithmeticException fraction) {
      return false;
    }
  }
}
