package org.isopter.model.letter;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.note.NoteReader;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A letter of a full examination is one page, also where many causes fit. */
class LetterLengthTest {

  private static final OffsetDateTime WHEN = OffsetDateTime.parse("2026-03-02T09:00:00+01:00");
  private static final int PAGE = 45;
  private static final int WIDTH = 100;

  private static final String REST =
      """
      ; VA sc R 6/9 L 6/6; PH sc R 6/6; NV sc R N5 L N5 @ 40 cm; ishihara R 15/15 L 15/15 (24); \
      red sat R 90% L 100%; VF R full; VF L full; disc OU pink, clear margin, not swollen; \
      CDR v R 0.3 L 0.3; IOP R 14 L 15 GAT; ptosis R absent L absent; EOM full; no diplopia; \
      no nystagmus""";

  private static Exam exam(String note) {
    Header header = Header.of(Identifier.of("r-1"), Party.of(Identifier.of("p-1")), WHEN);
    return new Exam(header, NoteReader.performed(WHEN).facts(note).orThrow());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "no RAPD; pupils room R 4 mm L 4 mm; pupil R direct brisk near brisk; pupil L direct brisk"
            + " near brisk",
        "no RAPD; pupils room R 1 mm L 1 mm; pupil R direct sluggish; pupil L direct sluggish",
        "RAPD could not be assessed; pupils room R 7 mm L 7 mm; pupil R direct absent; pupil L"
            + " direct absent",
        "pupils bright R 6 mm L 3 mm; pupils dim R 7 mm L 6 mm; pupil R direct sluggish near"
            + " sluggish; pupil L direct brisk near brisk",
        "RAPD L 2+; pupils room R 4 mm L 4 mm; pupil R direct brisk; pupil L direct sluggish",
        "RAPD equivocal; pupils unequal; pupil R direct sluggish; pupil L direct sluggish"
      })
  void aFullExaminationFitsOnAPage(String pupils) {
    String page = Letter.text().with(UrgencyRules.UK_C205).write(Summary.of(exam(pupils + REST)));
    List<String> lines = Arrays.asList(page.stripTrailing().split("\n", -1));
    assertTrue(lines.size() <= PAGE, lines.size() + " lines:\n" + page);
    lines.forEach(line -> assertTrue(line.length() <= WIDTH, line));
  }
}
