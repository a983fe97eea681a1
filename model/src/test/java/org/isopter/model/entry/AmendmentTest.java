package org.isopter.model.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.note.NoteReader;
import org.isopter.model.text.RecordText;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is amended is said; what may be meant in two ways amends nothing. */
class AmendmentTest {

  private static final OffsetDateTime DAY = OffsetDateTime.parse("2026-03-03T09:10:00Z");

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "IOP R 14 GAT             | IOP R 24 GAT          | right intraocular-pressure 14 mmHg (method goldmann)",
        "IOP R 14                 | IOP R 24 GAT          | right intraocular-pressure 14 mmHg",
        "VA sc R 6/9              | VA sc R 6/12          | right distance-acuity 6/9 (correction unaided)",
        "VA R 6/9                 | VA sc R 6/12          | right distance-acuity 6/9",
        "IOP R refused            | IOP R 24 GAT          | right intraocular-pressure absent: refused",
        "EOM L full               | EOM L full            | ''",
        "IOP R 14 GAT             | IOP R 14 GAT, L 15    | ''",
        "IOP R 14 GAT             | IOP L 24              | ''",
        "IOP R 14 GAT             | IOP R 24 NCT          | ''",
        "VA cc R 6/9              | VA sc R 6/12          | ''",
        "R hyphaema               | R hypopyon            | ''",
      })
  void replacesTheSameMeasurementAndWhatSaidLessOfIt(String old, String more, String replaced) {
    Exam before = exam(old);
    List<Fact<?>> facts = facts(more);
    assertEquals(List.of(), Amendment.unclear(before, facts));
    List<String> gone = Amendment.replaced(before, facts).stream().map(RecordText::of).toList();
    assertEquals(replaced.isEmpty() ? List.of() : List.of(replaced), gone);
    Exam after = Amendment.of(before, Identifier.of("e-2"), facts);
    List<Fact<?>> left = new ArrayList<>(before.facts());
    left.removeAll(Amendment.replaced(before, facts));
    left.removeAll(facts);
    left.addAll(facts);
    assertEquals(left, after.facts());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "IOP R 14 GAT           | IOP R 24",
        "IOP R 14 GAT; IOP R 16 NCT | IOP R 24",
        "IOP R 14 @ 08:30       | IOP R 24",
        "VA sc R 6/9            | VA R 6/12",
        "EOM L full             | L abduction -2",
        "VF L full              | VF L IT reduced",
      })
  void refusesWhatSaysLessOrLosesPlaces(String old, String more) {
    assertFalse(Amendment.unclear(exam(old), facts(more)).isEmpty());
  }

  private static List<Fact<?>> facts(String note) {
    return NoteReader.performed(DAY).read(note).facts();
  }

  private static Exam exam(String note) {
    Header header = Header.of(Identifier.of("e-1"), Party.of(Identifier.of("p-1")), DAY);
    return new Exam(header, facts(note));
  }
}
