package org.isopter.model.note;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.note.MatrixCell.Outcome;
import org.isopter.model.note.grammar.Headings;
import org.isopter.model.note.habit.Habits;
import org.isopter.model.note.item.Grammars;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Every finding in every surface form: each is read as the table of findings says, or not read.
 * Which cells are not read stands in a file of its own. A build tries some cells of each finding,
 * drawn by a seed ({@code -Dseed}); {@code -Dgolden=update} tries all and writes that file and the
 * figures of the page on shorthand anew.
 *
 * <p>What the forms say is common practice, no source.
 */
class NoteMatrixTest {

  private static final boolean UPDATE = "update".equals(System.getProperty("golden"));
  private static final long SEED = Long.getLong("seed", 2026);
  private static final int SAMPLE = 10;
  private static final Path UNREAD = NoteMatrix.FOLDER.resolve("unread.txt");
  private static final Path PAGE = Path.of("..", "docs", "shorthand.md");
  private static final String START = "<!-- matrix -->\n";
  private static final String END = "<!-- end of matrix -->\n";

  private static final Headings HEADINGS = new Headings(Grammars.ALL);
  private static final OffsetDateTime DAY = OffsetDateTime.parse("2026-03-02T09:30:00+01:00");

  @TestFactory
  Stream<DynamicTest> isReadAsTheTableSays() throws IOException {
    NoteMatrix matrix = NoteMatrix.read();
    if (UPDATE) {
      update(matrix);
    }
    Map<String, String> unread = unread();
    return matrix.findings().stream()
        .map(
            finding ->
                DynamicTest.dynamicTest(
                    finding.name(),
                    () -> sample(matrix, finding).forEach(cell -> check(cell, unread))));
  }

  /** The figures of the page are those of the file that the whole matrix wrote. */
  @Test
  void figuresAreOnThePage() throws IOException {
    String page = Files.readString(PAGE, StandardCharsets.UTF_8);
    String figures = page.substring(page.indexOf(START), page.indexOf(END) + END.length());
    String first = Files.readAllLines(UNREAD, StandardCharsets.UTF_8).get(0);
    assertTrue(figures.contains(first.substring(2)), first);
  }

  /** A reason that names no cell is one that was mended. */
  @Test
  void everyReasonNamesACell() throws IOException {
    NoteMatrix matrix = NoteMatrix.read();
    for (MatrixFinding finding : matrix.findings()) {
      List<String> places = matrix.cells(finding).map(MatrixCell::place).toList();
      for (String key : List.of("ask", "odd")) {
        for (String pattern : finding.patterns(key)) {
          assertTrue(
              places.stream().anyMatch(place -> MatrixFinding.matches(pattern, place)),
              finding.name() + ": " + pattern);
        }
      }
    }
  }

  private static List<MatrixCell> sample(NoteMatrix matrix, MatrixFinding finding) {
    List<MatrixCell> cells = new ArrayList<>(matrix.cells(finding).toList());
    Collections.shuffle(cells, new Random(SEED + finding.name().hashCode()));
    return cells.subList(0, Math.min(SAMPLE, cells.size()));
  }

  private static void check(MatrixCell cell, Map<String, String> unread) {
    Outcome outcome = cell.read(NoteMatrixTest::quickly);
    String shown = cell.finding().name() + ", " + cell.place() + ": " + cell.note();
    assertNotEquals(Outcome.MISREAD, outcome, shown);
    String mark = unread.getOrDefault(key(cell), String.valueOf(cell.wanted()));
    assertEquals(
        mark.replace('?', '-'), String.valueOf(outcome.mark), shown + " (seed " + SEED + ")");
  }

  /** Reads a note without looking for what its unread items may mean. */
  private static Note quickly(String note) {
    return new NoteReading(
            note, HEADINGS, Optional.of(DAY), Habits.none(), FormTrial.Extent.NOTHING)
        .read();
  }

  private static String key(MatrixCell cell) {
    return cell.finding().name() + "\t" + cell.heading() + "\t" + cell.place();
  }

  /** Returns the marks of the cells that are not read. */
  private static Map<String, String> unread() throws IOException {
    Map<String, String> marks = new LinkedHashMap<>();
    for (String line : Files.readAllLines(UNREAD, StandardCharsets.UTF_8)) {
      if (!line.startsWith("#")) {
        String[] parts = line.split("\t", -1);
        for (String words : parts[4].split(", ", -1)) {
          marks.put(parts[0] + "\t" + parts[1] + "\t" + parts[2] + "@" + words.strip(), parts[3]);
        }
      }
    }
    return marks;
  }

  private static void update(NoteMatrix matrix) throws IOException {
    Map<Outcome, Integer> counts = new EnumMap<>(Outcome.class);
    Map<String, List<String>> lines = new LinkedHashMap<>();
    List<String> misread = new ArrayList<>();
    for (MatrixFinding finding : matrix.findings()) {
      matrix
          .cells(finding)
          .forEach(
              cell -> {
                Outcome outcome = outcome(cell);
                counts.merge(outcome, 1, Integer::sum);
                if (outcome == Outcome.MISREAD) {
                  misread.add(key(cell) + "\t" + cell.note());
                }
                if (outcome.mark != cell.wanted()) {
                  String[] place = cell.place().split("@", -1);
                  lines
                      .computeIfAbsent(
                          String.join(
                              "\t", finding.name(), cell.heading(), place[0], outcome.mark + ""),
                          any -> new ArrayList<>())
                      .add(place[1].isEmpty() ? " " : place[1]);
                }
              });
    }
    String figures = figures(counts);
    String file =
        lines.entrySet().stream()
            .map(line -> line.getKey() + "\t" + String.join(", ", line.getValue()))
            .collect(Collectors.joining("\n", "# " + figures + "\n", "\n"));
    Files.writeString(UNREAD, file, StandardCharsets.UTF_8);
    String page = Files.readString(PAGE, StandardCharsets.UTF_8);
    Files.writeString(
        PAGE,
        page.substring(0, page.indexOf(START) + START.length())
            + figures
            + "\n"
            + page.substring(page.indexOf(END)),
        StandardCharsets.UTF_8);
    assertEquals(List.of(), misread);
  }

  /** Asks what an unread note may mean only where it is not clear already: that takes long. */
  private static Outcome outcome(MatrixCell cell) {
    Outcome quick = cell.read(NoteMatrixTest::quickly);
    return quick == Outcome.REFUSED ? cell.read(Notes.READER::read) : quick;
  }

  private static String figures(Map<Outcome, Integer> counts) {
    int clear =
        Stream.of(Outcome.READ, Outcome.ASKED, Outcome.LEFT, Outcome.REFUSED, Outcome.MISREAD)
            .mapToInt(outcome -> counts.getOrDefault(outcome, 0))
            .sum();
    return "%d clear cells: %d read, %d asked, %d refused, %d left unread as odd, %d read as something else; %d cells that must not be read, none of them is"
        .formatted(
            clear,
            counts.getOrDefault(Outcome.READ, 0),
            counts.getOrDefault(Outcome.ASKED, 0),
            counts.getOrDefault(Outcome.REFUSED, 0),
            counts.getOrDefault(Outcome.LEFT, 0),
            counts.getOrDefault(Outcome.MISREAD, 0),
            counts.getOrDefault(Outcome.RIGHTLY_UNREAD, 0));
  }
}
