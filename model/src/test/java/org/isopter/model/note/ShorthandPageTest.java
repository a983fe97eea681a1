package org.isopter.model.note;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.note.item.Grammars;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every example of the page on shorthand gives what the page says. */
class ShorthandPageTest {

  private static final Path PAGE = Path.of("..", "docs", "shorthand.md");
  private static final Pattern ROW = Pattern.compile("^\\| `([^`]+)` \\| (`.+`) \\|$");

  private record Row(String shorthand, String answer) {}

  @TestFactory
  Stream<DynamicTest> givesWhatThePageSays() throws IOException {
    return rows().stream()
        .map(
            row ->
                DynamicTest.dynamicTest(
                    row.shorthand(), () -> assertEquals(row.answer(), answer(row.shorthand()))));
  }

  @Test
  void hasManyExamples() throws IOException {
    assertTrue(rows().size() > 70, rows().size() + " rows");
  }

  @Test
  void showsAnExampleOfEveryFindingThatCanBeRead() throws IOException {
    String page = Files.readString(PAGE, StandardCharsets.UTF_8);
    Grammars.WORDINGS.forEach(
        wording -> assertTrue(page.contains(" " + wording.finding() + ": "), wording.heading()));
  }

  private static List<Row> rows() throws IOException {
    return Files.readAllLines(PAGE, StandardCharsets.UTF_8).stream()
        .map(ROW::matcher)
        .filter(java.util.regex.Matcher::matches)
        .map(match -> new Row(match.group(1), match.group(2)))
        .toList();
  }

  private static String answer(String shorthand) {
    Note note = Notes.READER.read(shorthand);
    return Stream.concat(
            note.facts().stream().map(FactLines::of),
            note.unread().stream().map(unread -> "refused: " + unread.why()))
        .map(line -> "`" + line + "`")
        .collect(Collectors.joining("<br>"));
  }
}
