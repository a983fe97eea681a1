package org.isopter.model.value;

import java.util.Optional;

/** Free text that JSON, YAML and XML can all carry and give back unchanged. */
public final class TextCheck {

  private TextCheck() {}

  /** Returns what stands in the text's way, or nothing; the fault's path is empty. */
  public static Optional<Fault> check(String text) {
    if (text.isBlank()) {
      return Optional.of(Fault.of("", "blank text", "some text"));
    }
    if (!text.equals(text.strip())) {
      return Optional.of(Fault.of("", "\"" + text + "\"", "text without spaces around it"));
    }
    for (int at = 0; at < text.length(); at += Character.charCount(text.codePointAt(at))) {
      if (isUnfit(text.codePointAt(at))) {
        return Optional.of(unfit(text.codePointAt(at), at));
      }
    }
    return Optional.empty();
  }

  /**
   * Returns the text unchanged.
   *
   * @throws FaultException when something stands in its way
   */
  public static String require(String path, String text) {
    check(text)
        .ifPresent(
            fault -> {
              throw new FaultException(fault.at(path));
            });
    return text;
  }

  private static boolean isUnfit(int point) {
    // XML 1.0 has no other control characters, and its parsers turn a carriage return into a line
    // feed: such text would not come back as it was written.
    boolean control = point < 0x20 && point != '\n' && point != '\t';
    boolean surrogate = point >= Character.MIN_SURROGATE && point <= Character.MAX_SURROGATE;
    return control || surrogate || point == 0xFFFE || point == 0xFFFF || isC1(point);
  }

  private static boolean isC1(int point) {
    return point >= 0x7F && point <= 0x9F;
  }

  private static Fault unfit(int point, int at) {
    return new Fault(
        "",
        "the character U+%04X at position %d".formatted(point, at + 1),
        "text without control characters",
        "remove it");
  }
}
