package org.isopter.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.entry.EntryField;
import org.isopter.model.entry.FieldAnswer;
import org.isopter.model.entry.UsualStep;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Status;
import org.isopter.model.note.NoteReader;
import org.junit.jupiter.api.Test;

final class SheetTest {

  private static final OffsetDateTime DAY = OffsetDateTime.parse("2026-03-02T09:30:00+01:00");

  private final Sheet sheet = new Sheet();

  private static List<?> lines(Map<String, Object> view, String field) {
    return (List<?>) field(view, field).get("lines");
  }

  private static Map<?, ?> field(Map<String, Object> view, String field) {
    return (Map<?, ?>) ((Map<?, ?>) view.get("fields")).get(field);
  }

  private static Exam saved(Map<String, Object> view) {
    return new RecordReader(Catalogue.standard())
        .read((String) view.get("record"), RecordFormat.JSON)
        .orThrow();
  }

  @Test
  void savesWhatANoteOfTheSameWordsGives() {
    Map<String, Object> view =
        sheet.read(
            Forms.of(
                "acuity.right", "6/5 sc",
                "acuity.left", "6/24-1 sc",
                "pinhole.left", "NI",
                "pupil.left", "3 mm dim; direct sluggish",
                "defect.both", "L 2+",
                "disc.left", "pale, clear margins",
                "pressure.right", "14 GAT 10:30",
                "pressure.left", "declined"));

    String note =
        """
        VA sc R 6/5 L 6/24-1
        PH L NI
        pupil L 3 mm dim
        pupil L direct sluggish
        RAPD L 2+
        disc L pale, clear margins
        IOP R 14 GAT 10:30
        IOP L declined
        """;
    Exam typed = NoteReader.exam(saved(view).header(), note).orThrow();
    assertEquals(List.copyOf(typed.facts()), saved(view).facts());
    assertEquals(List.of(), view.get("faults"));
  }

  @Test
  void recordsNothingOfAFieldThatIsEmpty() {
    Map<String, Object> view = sheet.read(Forms.of("acuity.right", "6/5", "disc.right", " "));

    assertEquals(1, saved(view).facts().size());
    assertTrue(((String) view.get("silent")).contains("optic disc"));
  }

  @Test
  void refusesWordsOfTheOtherEye() {
    for (String words : List.of("R 6/9", "OD 6/9", "R 6/9 L 6/12", "OU 6/9")) {
      Map<String, Object> view = sheet.read(Forms.of("acuity.left", words));

      assertNull(view.get("record"), words);
      assertEquals(false, field(view, "acuity.left").get("clear"), words);
    }
  }

  @Test
  void refusesAnAcuityInTheFieldOfSomethingElse() {
    for (String name : List.of("pressure.left", "movements.left", "red.right", "disc.right")) {
      assertNull(sheet.read(Forms.of(name, "6/12-2 cc")).get("record"), name);
      assertNull(sheet.read(Forms.of(name, "HM")).get("record"), name);
    }
  }

  @Test
  void recordsNothingWhereAWordIsNotUnderstood() {
    Map<String, Object> view =
        sheet.read(Forms.of("disc.left", "pink, bluury margin", "acuity.left", "6/9"));

    assertNull(view.get("record"));
    assertNull(view.get("letter"));
    assertTrue(lines(view, "disc.left").get(0).toString().contains("bluury"));
    assertEquals(List.of("A field is not understood to the last word."), view.get("faults"));
  }

  @Test
  void takesNoEyeTogetherForTheTwoApart() {
    Map<String, Object> view = sheet.read(Forms.of("pupils.both", "not done"));

    assertNull(view.get("record"));
  }

  @Test
  void namesTheEyeInAFieldOfBoth() {
    Map<String, Object> view =
        sheet.read(Forms.of("nystagmus.both", "R horizontal jerk, fast left"));

    assertTrue(lines(view, "nystagmus.both").get(0).toString().startsWith("Right eye. Nystagmus"));
  }

  @Test
  void showsContradictionsWhileOtherFieldsAreUnclear() {
    Map<String, Object> view =
        sheet.read(
            Forms.of("disc.right", "swollen, clear margins, Frisen 3", "acuity.left", "what"));

    assertFalse(((List<?>) view.get("breaches")).isEmpty());
  }

  private static String amending(String old, String id, String... namesAndWords) {
    return Forms.of(namesAndWords).replace("id\u001fs-1", "id\u001f" + id)
        + "old\u001f"
        + old
        + "\u001e";
  }

  @Test
  void amendsARecordByWhatIsWritten() {
    String old =
        (String)
            sheet.read(Forms.of("acuity.right", "6/9", "pressure.left", "14 GAT")).get("record");
    Map<String, Object> view = sheet.read(amending(old, "s-2", "pressure.left", "16.0 GAT"));

    Exam amended = saved(view);
    assertEquals(Optional.of("s-1"), amended.header().amends().map(Identifier::value));
    assertEquals(Status.AMENDED, amended.header().status());
    assertEquals(
        NoteReader.exam(amended.header(), "VA R 6/9; IOP L 16.0 GAT").orThrow().facts(),
        amended.facts());
    List<?> lines = (List<?>) ((Map<?, ?>) view.get("old")).get("lines");
    assertEquals(2, lines.size());
    assertTrue(lines.get(1).toString().startsWith("Replaced: "), lines.toString());
    assertFalse(lines.get(0).toString().startsWith("Replaced: "), lines.toString());
  }

  @Test
  void replacesNothingOfTheOtherEye() {
    String old =
        (String) sheet.read(Forms.of("acuity.right", "6/9", "acuity.left", "6/12")).get("record");
    Exam amended = saved(sheet.read(amending(old, "s-2", "acuity.left", "6/24")));

    assertEquals(
        NoteReader.exam(amended.header(), "VA R 6/9 L 6/24").orThrow().facts(), amended.facts());
  }

  @Test
  void amendsNothingThatItCannotOpenOrThatHasTheSameIdentifier() {
    String old = (String) sheet.read(Forms.of("acuity.right", "6/9")).get("record");
    for (String form :
        List.of(
            amending(old, "s-1", "acuity.right", "6/12"),
            amending(old.replace("s-1", ""), "s-2", "acuity.right", "6/12"),
            amending("{", "s-2", "acuity.right", "6/12"),
            amending(old, "s-2"))) {
      assertNull(sheet.read(form).get("record"), form);
      assertFalse(((List<?>) sheet.read(form).get("faults")).isEmpty(), form);
      assertEquals("", sheet.fhir(form));
    }
  }

  @Test
  void drawsOnlyWhatWasUnderstood() {
    List<?> pictures =
        (List<?>) sheet.read(Forms.of("disc.left", "pale, bluury margin")).get("pictures");

    assertTrue(pictures.toString().contains("Left eye. Swelling: not recorded."));
    assertFalse(pictures.toString().contains("pale"));
  }

  @Test
  void refusesATimeWithoutItsOffset() {
    Map<String, Object> view =
        sheet.read(
            Forms.of("acuity.right", "6/5").replace("2026-03-02T09:30:00+01:00", "2026-03-02"));

    assertNull(view.get("record"));
    assertEquals(1, ((List<?>) view.get("faults")).size());
  }

  @Test
  void saysWhatEachButtonForNormalRecords() {
    for (EntryField row : UsualStep.allFields()) {
      for (String eye : row.perEye() ? List.of("right", "left") : List.of("both")) {
        if (!row.normal().isEmpty()) {
          String name = row.key() + "." + eye;
          Map<String, Object> view = sheet.read(Forms.of(name, row.normal()));
          String said =
              String.join("; ", lines(view, name).stream().map(Object::toString).toList());
          assertEquals(String.join("; ", FieldAnswer.normal(row, DAY)), said, name);
        }
      }
    }
  }

  @Test
  void understandsTheExampleOfEachField() {
    for (EntryField row : UsualStep.allFields()) {
      String name = row.key() + (row.perEye() ? ".left" : ".both");
      Map<String, Object> view = sheet.read(Forms.of(name, row.example()));
      assertEquals(true, field(view, name).get("clear"), name);
    }
  }
}
