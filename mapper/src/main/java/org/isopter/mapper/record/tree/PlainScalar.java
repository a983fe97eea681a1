package org.isopter.mapper.record.tree;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.ScalarEvent;

/** What a YAML scalar without quotes stands for. */
final class PlainScalar {

  private static final Set<String> TRUTHS =
      Set.of("true", "True", "TRUE", "false", "False", "FALSE");

  private static final Set<String> NOTHINGS = Set.of("", "~", "null", "Null", "NULL");

  /** Words that are text in YAML 1.2 and something else to readers of YAML 1.1. */
  private static final Set<String> ONCE_TRUTHS = Set.of("y", "n", "yes", "no", "on", "off");

  /** Numbers of YAML 1.2 and 1.1: octal, hexadecimal, underscores, base 60. */
  private static final Pattern NUMBER =
      Pattern.compile(
          "[-+]?(?:\\.\\d+|\\d[\\d_:]*(?:\\.\\d*)?(?:[eE][-+]?\\d+)?|0x[0-9a-fA-F]+|0o[0-7]+)");

  private PlainScalar() {}

  static Node.Kind kind(ScalarEvent scalar) {
    return scalar.isPlain() ? kind(scalar.getValue()) : Node.Kind.TEXT;
  }

  static String text(ScalarEvent scalar) {
    return kind(scalar) == Node.Kind.TRUTH
        ? scalar.getValue().toLowerCase(Locale.ROOT)
        : scalar.getValue();
  }

  /** Returns the tag that was put before a value. */
  static Optional<String> tag(Event event) {
    if (event instanceof ScalarEvent scalar) {
      return scalar.getTag();
    }
    return event instanceof CollectionStartEvent start ? start.getTag() : Optional.empty();
  }

  /** Returns what the text is when it stands without quotes. */
  static Node.Kind kind(String text) {
    if (NOTHINGS.contains(text)) {
      return Node.Kind.NOTHING;
    }
    if (TRUTHS.contains(text)) {
      return Node.Kind.TRUTH;
    }
    return isNumber(text) ? Node.Kind.NUMBER : Node.Kind.TEXT;
  }

  /** Says whether every reader of YAML takes the text as text without quotes. */
  static boolean isClear(String text) {
    return kind(text) == Node.Kind.TEXT && !ONCE_TRUTHS.contains(text.toLowerCase(Locale.ROOT));
  }

  private static boolean isNumber(String text) {
    // Most texts begin with a letter: they are told apart without the pattern.
    return !Character.isLetter(text.charAt(0)) && NUMBER.matcher(text).matches();
  }
}
