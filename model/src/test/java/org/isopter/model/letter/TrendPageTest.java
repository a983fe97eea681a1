package org.isopter.model.letter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.List;
import org.isopter.model.clinical.statement.Caution;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.note.NoteReader;
import org.junit.jupiter.api.Test;

/** The page of what changed between visits. */
final class TrendPageTest {

  private static final String CHANGES =
      """
      v-1 of 2026-03-01 -> v-2 of 2026-06-01
      Intraocular pressure, left eye: 14 mmHg -> 20 mmHg
          difference 6 mmHg
          The test-retest limit: undecided.
      Colour plates, left eye: 14 of 15 -> 15 of 15
      """;

  private static String page() {
    Header header =
        Header.of(
            Identifier.of("v-1"),
            Party.of(Identifier.of("p-1")),
            OffsetDateTime.parse("2026-03-01T09:30:00+01:00"));
    Exam exam = NoteReader.exam(header, "IOP L 14").orThrow();
    return TrendPage.html(List.of(exam), List.of(CHANGES + Caution.TEXT + "\n"));
  }

  @Test
  void listsEachFindingWithWhatIsSaidOfIt() {
    assertTrue(
        page()
            .contains(
                "<li>Intraocular pressure, left eye: 14 mmHg \u2192 20 mmHg; difference 6 mmHg;"
                    + " The test-retest limit: undecided.</li>\n<li>Colour plates"),
        page());
  }

  @Test
  void saysTheCautionOnce() {
    assertEquals(2, page().split("Not a medical device", -1).length);
  }
}
