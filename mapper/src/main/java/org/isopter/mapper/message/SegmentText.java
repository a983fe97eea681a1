package org.isopter.mapper.message;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.temporal.ChronoField;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.v2.V2Systems;

/** Values as a field of a message holds them (HL7 v2.5.1, chapters 2 and 2A). */
final class SegmentText {

  static final String MARKS = "^~\\&";

  /** A message has four decimals of a second, no more. */
  private static final DateTimeFormatter TIME =
      new DateTimeFormatterBuilder()
          .appendPattern("uuuuMMddHHmmss")
          .appendFraction(ChronoField.NANO_OF_SECOND, 0, 4, true)
          .appendPattern("xx")
          .toFormatter(Locale.ROOT);

  private SegmentText() {}

  /** Returns a text in which nothing is read as a mark. */
  static String escaped(String text) {
    StringBuilder escaped = new StringBuilder();
    text.chars().forEach(letter -> escaped.append(escaped((char) letter)));
    return escaped.toString();
  }

  private static String escaped(char letter) {
    return switch (letter) {
      case '|' -> "\\F\\";
      case '^' -> "\\S\\";
      case '~' -> "\\R\\";
      case '\\' -> "\\E\\";
      case '&' -> "\\T\\";
      case '\n' -> "\\.br\\";
      case '\r' -> "\\X0D\\";
      default -> String.valueOf(letter);
    };
  }

  /** Returns a time with its offset. */
  static String time(OffsetDateTime time) {
    return TIME.format(time);
  }

  /** Returns a number with its unit's field: the code by UCUM. */
  static String unit(Raw.Obj quantity) {
    return quantity
        .string("code")
        .map(code -> escaped(code) + "^" + escaped(code) + "^UCUM")
        .orElse("");
  }

  /** Returns a concept: at most two codings; empty where a code system has no name. */
  static Optional<String> coded(Raw.Obj concept) {
    List<String> codings =
        concept.objects("coding").stream().limit(2).flatMap(c -> coding(c).stream()).toList();
    boolean whole = codings.size() == Math.min(2, concept.objects("coding").size());
    return whole && !codings.isEmpty()
        ? Optional.of(codings.stream().collect(Collectors.joining("^")))
        : Optional.empty();
  }

  private static Optional<String> coding(Raw.Obj coding) {
    String display = coding.string("display").orElse("");
    return coding
        .string("system")
        .flatMap(V2Systems::name)
        .flatMap(
            name ->
                coding
                    .string("code")
                    .map(code -> escaped(code) + "^" + escaped(display) + "^" + name));
  }

  /** Returns an identifier with the URI of who gives it out; between them is what a type has. */
  static String identified(String value, Optional<String> system, String between, String mark) {
    String giver = system.map(uri -> between + mark + escaped(uri) + mark + "URI").orElse("");
    return escaped(value) + giver;
  }
}
