package org.isopter.model.letter;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.note.NoteReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A letter says which of its entries do not agree, of which eye, and nothing of sound ones. */
class DisagreementsTest {

  private static final OffsetDateTime WHEN = OffsetDateTime.parse("2026-03-02T09:00:00+01:00");

  private static List<String> lines(String note) {
    return Disagreements.lines(exam(note));
  }

  private static Exam exam(String note) {
    Header header = Header.of(Identifier.of("r-1"), Party.of(Identifier.of("p-1")), WHEN);
    return new Exam(header, NoteReader.performed(WHEN).facts(note).orThrow());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "RAPD L; VA cc R CF @ 1 m L 6/9 | The afferent defect is in the eye that sees better by far.",
        "VA cc R NLP L 6/6; pupil R direct brisk"
            + " | Right eye: An eye without light perception has a good direct light response.",
        "VA cc L NLP R 6/6; NV cc L N8 @ 40 cm"
            + " | Left eye: An eye without light perception reads print.",
        "ptosis R present; ptosis L present; MRD1 R 5 mm L 5 mm"
            + " | Each eye: An upper lid droops and stands 4.5 mm or more above the reflex."
      })
  void namesTheEyeAndWhatDoesNotAgree(String note, String line) {
    assertEquals(List.of(line), lines(note));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "RAPD R; VA cc R CF @ 1 m L 6/9",
        "VA cc R NLP L 6/6; pupil R direct absent",
        "VA cc L NLP R 6/6; NV cc R N8 @ 40 cm",
        "ptosis R present; MRD1 R 1 mm",
        "VA cc R 6/24 L 6/6",
        "IOP R 21"
      })
  void saysNothingOfWhatAgreesOrIsIncomplete(String note) {
    assertEquals(List.of(), lines(note));
  }

  @Test
  void standsBeforeWhatFollows() {
    Summary wrongEye = Summary.of(exam("RAPD L; VA cc R CF @ 1 m L 6/9"));
    List<String> page = Arrays.asList(Letter.text().write(wrongEye).split("\n", -1));
    int here = page.indexOf("Entries that do not agree; one may be a slip:");
    assertEquals(
        "- The afferent defect is in the eye that sees better by far.", page.get(here + 1));
    assertEquals(here + 3, page.indexOf("What follows (not observed):"));
  }
}
