package org.isopter.mapper.hl7;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.mapper.json.Raw;

/** A number as HL7 versions 2 and 3 write it. */
public final class Hl7Number {

  /** FHIR writes neither a plus sign nor leading zeros. */
  private static final Pattern FORM = Pattern.compile("\\+?(-?)0*(\\d+(?:\\.\\d+)?)");

  private Hl7Number() {}

  /** Returns a number with the digits that it has; empty for what is none. */
  public static Optional<Raw.Leaf> of(String text) {
    return Optional.of(FORM.matcher(text))
        .filter(Matcher::matches)
        .map(number -> new Raw.Leaf(Raw.Kind.NUMBER, number.group(1) + number.group(2)));
  }
}
