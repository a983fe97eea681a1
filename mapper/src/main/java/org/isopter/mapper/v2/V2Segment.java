package org.isopter.mapper.v2;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A line of a message, its fields counted as the standard does (HL7 v2.5.1, chapter 2).
 *
 * @param fields the fields; the first is the name of the segment
 * @param marks the characters that divide fields, components, repetitions, escape, subcomponents
 */
record V2Segment(List<String> fields, String marks) {

  private static final int COMPONENT = 1;
  private static final int REPETITION = 2;
  private static final int ESCAPE = 3;
  private static final int SUBCOMPONENT = 4;

  V2Segment {
    fields = List.copyOf(fields);
  }

  /** Returns a line as a segment; the first field of a header is the mark that divides fields. */
  static V2Segment of(String line, String marks) {
    List<String> parts = divided(line, marks.charAt(0));
    if (!line.startsWith("MSH")) {
      return new V2Segment(parts, marks);
    }
    Stream<String> head = Stream.of("MSH", marks.substring(0, 1));
    return new V2Segment(Stream.concat(head, parts.stream().skip(1)).toList(), marks);
  }

  private static List<String> divided(String text, char mark) {
    return List.of(text.split(Pattern.quote(String.valueOf(mark)), -1));
  }

  String name() {
    return fields.get(0);
  }

  /** Returns a field as it stands; empty where there is none. {@code ""} says: deleted. */
  String raw(int number) {
    return number < fields.size() ? fields.get(number) : "";
  }

  /**
   * Says whether a component of a coded field is divided, of which no more than one part is read.
   */
  boolean isDivided(int number) {
    return marks.length() > SUBCOMPONENT && raw(number).indexOf(marks.charAt(SUBCOMPONENT)) >= 0;
  }

  /** Returns the repetitions of a field; none where it is empty. */
  List<String> repetitions(int number) {
    String field = raw(number);
    return field.isEmpty() ? List.of() : divided(field, marks.charAt(REPETITION));
  }

  /** Returns a component of a repetition, escapes resolved. */
  String component(String repetition, int number) {
    return part(repetition, number, 1);
  }

  /** Returns a subcomponent of a component of a repetition, escapes resolved. */
  String part(String repetition, int component, int number) {
    String own = numbered(divided(repetition, marks.charAt(COMPONENT)), component);
    return plain(numbered(divided(own, marks.charAt(SUBCOMPONENT)), number));
  }

  private static String numbered(List<String> parts, int number) {
    return number <= parts.size() ? parts.get(number - 1) : "";
  }

  /** Returns a text, escapes resolved. */
  String plain(String text) {
    char escape = marks.charAt(ESCAPE);
    StringBuilder plain = new StringBuilder();
    int at = 0;
    while (at < text.length()) {
      int end = text.charAt(at) == escape ? text.indexOf(escape, at + 1) : -1;
      if (end < 0) {
        plain.append(text.charAt(at));
        at++;
      } else {
        plain.append(escaped(text.substring(at + 1, end)));
        at = end + 1;
      }
    }
    return plain.toString();
  }

  private String escaped(String code) {
    return switch (code) {
      case "F" -> marks.substring(0, 1);
      case "S" -> marks.substring(COMPONENT, COMPONENT + 1);
      case "R" -> marks.substring(REPETITION, REPETITION + 1);
      case "E" -> marks.substring(ESCAPE, ESCAPE + 1);
      case "T" -> marks.substring(SUBCOMPONENT, SUBCOMPONENT + 1);
      case "H", "N" -> "";
      case ".br" -> "\n";
      default -> marks.charAt(ESCAPE) + code + marks.charAt(ESCAPE);
    };
  }
}
