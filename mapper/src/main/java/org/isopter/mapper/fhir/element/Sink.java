package org.isopter.mapper.fhir.element;

import java.math.BigDecimal;
import org.isopter.model.value.Code;

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

  /** Takes a Coding, which is written again and again. */
  default void coding(Code code) {
    startObject();
    name("system");
    constant(code.system());
    name("code");
    constant(code.code());
    name("display");
    constant(code.display());
    endObject();
  }

  /** Takes a number with the digits that it has. */
  void number(BigDecimal value);

  void truth(boolean value);
}
