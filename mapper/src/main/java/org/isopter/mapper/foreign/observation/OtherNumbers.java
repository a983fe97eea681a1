package org.isopter.mapper.foreign.observation;

import java.util.List;
import java.util.regex.Pattern;
import org.isopter.model.exam.Fact;

/**
 * Numbers in a note that look like another result of the same test: a second pressure, a second
 * acuity, another distance of the chart.
 */
final class OtherNumbers {

  /** A number that is not a part of another, with no unit behind it but that of a pressure. */
  private static final Pattern PRESSURE =
      Pattern.compile(
          "(?<![\\p{L}\\d.,/:#-])([1-9]\\d(?:[.,]\\d+)?)(?![\\d/:-])"
              + "(?=\\s*mm\\s*hg|[\\s.,;)]*$|[.,;)]?\\s+(?!o.?clock|x|times|%)[\\p{L}]{2,})"
              + "(?!\\s*(?:min|hour|hr|day|week|month|year|deg|dpt|dioptr|micr)\\p{L}*)",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern FRACTION =
      Pattern.compile("(?<![\\d/.])\\d{1,2}/\\d{1,3}(?![\\d/])");

  private static final Pattern DISTANCE =
      Pattern.compile("(?<![\\p{L}\\d.,/])(\\d(?:[.,]\\d+)?)\\s*m(?:et(?:er|re)s?)?(?!\\p{L})");

  /** Charts are made for this distance unless something else is said (ISO 8596 asks for 4 to 6). */
  private static final String USUAL = "6";

  private OtherNumbers() {}

  /** Says whether a note has a number that may be another result than a fact's. */
  static boolean in(String note, Fact<?> fact) {
    String finding = fact.finding().id();
    if (finding.equals("intraocular-pressure")) {
      return PRESSURE.matcher(note).results().anyMatch(found -> isNew(found.group(1), fact));
    }
    return finding.equals("distance-acuity")
        && (FRACTION.matcher(note).results().anyMatch(found -> isNew(found.group(), fact))
            || DISTANCE
                .matcher(note)
                .results()
                .map(found -> found.group(1))
                .anyMatch(metres -> !metres.equals(USUAL) && isNew(metres + " m", fact)));
  }

  private static boolean isNew(String number, Fact<?> fact) {
    String said = String.valueOf(fact.remarks(List.of()).withoutTime());
    return !Pattern.compile("(?<![\\d.])" + Pattern.quote(number) + "(?![\\d.])")
        .matcher(said)
        .find();
  }
}
