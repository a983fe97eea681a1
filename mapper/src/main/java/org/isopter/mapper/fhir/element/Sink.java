package org.isopter.mapper.fhir.element;

import java.math.BigDecimal;

/** Takes JSON piece by piece, in the order of its text. */
public interface Sink {

  void startObject();

  void endObject();

  void startList();

  void endList();

  /** Takes the name of what comes next. */
  void name(String name);

  void text(String value);

  /** Takes a text that is written again and again, such as a code. */
  default void constant(String value) {
    text(value);
  }

  /** Takes a number with the digits that it has. */
  void number(BigDecimal value);

  void truth(boolean value);
}
