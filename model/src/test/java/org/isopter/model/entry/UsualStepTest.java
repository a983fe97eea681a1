package org.isopter.model.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.note.Note;
import org.isopter.model.note.NoteReader;
import org.isopter.model.text.RecordText;
import org.junit.jupiter.api.Test;

/** One description of a usual examination, from which entry, sheet, letter and tables are made. */
class UsualStepTest {

  private final NoteReader reader =
      NoteReader.performed(OffsetDateTime.parse("2026-03-02T09:30:00+01:00"));

  private Set<String> facts(String text) {
    Note note = reader.read(text);
    assertTrue(note.unread().isEmpty(), () -> text + ": " + note.unread());
    return note.facts().stream().map(RecordText::of).collect(Collectors.toSet());
  }

  private Set<String> normal(EntryField field) {
    String told = field.heading() + " " + field.normal();
    String text = field.normal().contains(field.heading()) ? field.normal() : told;
    return field.perEye() ? facts("R: " + text + "\nL: " + text) : facts(text);
  }

  @Test
  void normalRecordsTheSameAskedAsAWholeAndEyeByEye() {
    for (UsualStep step : UsualStep.ASKED) {
      List<EntryField> normal = step.fields().stream().filter(EntryField::hasNormal).toList();
      Set<String> eyeByEye =
          normal.stream().flatMap(field -> normal(field).stream()).collect(Collectors.toSet());
      String whole = step.question().normal();
      assertEquals(eyeByEye, whole.isEmpty() ? Set.of() : facts(whole), step.word());
    }
  }

  @Test
  void speaksOfItsFindingsInItsNormalAndInItsExamples() {
    for (UsualStep step : UsualStep.ASKED) {
      for (String example : step.question().example().split(", or ", -1)) {
        boolean headed = example.equals("PERRLA");
        String text = headed ? example : step.question().heading() + " " + example;
        assertTrue(
            reader.read(text).facts().stream()
                .map(Fact::finding)
                .anyMatch(step.findings()::contains),
            text);
      }
    }
  }

  @Test
  void asksForEachPartOnce() {
    List<String> keys = UsualStep.allFields().stream().map(EntryField::key).toList();
    assertEquals(keys.size(), new HashSet<>(keys).size());
    List<Finding<?>> findings =
        Stream.of(UsualStep.values())
            .<Finding<?>>flatMap(step -> step.findings().stream())
            .toList();
    assertEquals(findings.size(), new HashSet<>(findings).size());
    assertFalse(UsualStep.ASKED.contains(UsualStep.BACK));
  }
}
