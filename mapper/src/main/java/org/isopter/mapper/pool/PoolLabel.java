package org.isopter.mapper.pool;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.util.regex.Pattern;
import org.isopter.model.value.Code;

/** The security label of what a pool without identities writes (HL7 v3 ObservationValue). */
final class PoolLabel {

  static final String CODE = "PSEUDED";

  private static final Pattern LABEL =
      Pattern.compile("\"code\"\\s*:\\s*\"" + CODE + "\"|<code\\s+value=[\"']" + CODE + "[\"']");

  private PoolLabel() {}

  static Code code() {
    return new Code(
        "http://terminology.hl7.org/CodeSystem/v3-ObservationValue", CODE, "pseudonymized");
  }

  /** Says whether a document has the label, in JSON or XML; within a text a quote is escaped. */
  static boolean isOn(byte[] document) {
    String text = new String(document, ISO_8859_1);
    return text.contains(CODE) && LABEL.matcher(text).find();
  }
}
