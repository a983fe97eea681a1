package org.isopter.model.scenario;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Stream;

/**
 * One row of a table of scenarios. What must and must not be said is a piece of text; with the name
 * of a kind of statement and {@code >} before it, it is looked for in statements of that kind
 * alone.
 *
 * @param name what the row is about
 * @param record the record, in shorthand
 * @param says pieces each of which is said
 * @param silent pieces none of which is said
 * @param source where that is published
 */
record Scenario(String name, String record, List<String> says, List<String> silent, String source) {

  static Stream<Scenario> rows(String file) {
    String path = "/scenarios/" + file + ".tsv";
    try (InputStream in = Objects.requireNonNull(Scenario.class.getResourceAsStream(path), path)) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return Arrays.stream(text.split("\n")).skip(1).map(Scenario::row).toList().stream();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private static Scenario row(String line) {
    String[] cells = line.split("\t", -1);
    if (cells.length != 5 || cells[4].isBlank()) {
      throw new AssertionError("not five cells, or no source: " + line);
    }
    return new Scenario(cells[0], cells[1], pieces(cells[2]), pieces(cells[3]), cells[4]);
  }

  private static List<String> pieces(String cell) {
    return cell.isBlank() ? List.of() : Arrays.stream(cell.split(" & ")).map(String::trim).toList();
  }

  /** Says whether a piece is in one of the lines, each of a kind and its text. */
  static boolean isSaid(String piece, List<String> lines) {
    String wanted = piece.toLowerCase(Locale.ROOT);
    int at = wanted.indexOf('>');
    String kind = at < 0 ? "" : wanted.substring(0, at).trim() + ">";
    String text = at < 0 ? wanted : wanted.substring(at + 1).trim();
    return lines.stream()
        .map(line -> line.toLowerCase(Locale.ROOT))
        .anyMatch(line -> line.startsWith(kind) && line.contains(text));
  }

  @Override
  public String toString() {
    return name;
  }
}
