package org.isopter.sheet;

import org.isopter.mapper.record.PlainJson;
import org.teavm.jso.JSExport;

/** What the page calls. */
public final class SheetScript {

  private static final Sheet SHEET = new Sheet();

  private SheetScript() {}

  /** Starts nothing; the compiler asks for it. */
  public static void main(String[] arguments) {}

  /** Makes what reading words needs; see {@link Sheet#prepare}. */
  @JSExport
  public static void isopterPrepare() {
    SHEET.prepare();
  }

  /** Returns what a form says as JSON; see {@link Sheet#read}. */
  @JSExport
  public static String isopterRead(String form) {
    return PlainJson.of(SHEET.read(form));
  }

  /** Returns the examination of a form as FHIR; see {@link Sheet#fhir}. */
  @JSExport
  public static String isopterFhir(String form) {
    return SHEET.fhir(form);
  }
}
