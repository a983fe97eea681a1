package org.isopter.mapper.foreign.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Random;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.mapper.record.PlainJson;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Status;
import org.isopter.model.form.Form;
import org.isopter.model.note.NoteReader;
import org.junit.jupiter.api.Test;

final class FormAnswersTest {

  private static final Header HEADER =
      Header.of(
          Identifier.of("f-1"),
          Party.of(Identifier.of("https://hospital.example/people", "p-17")),
          java.time.OffsetDateTime.parse("2026-03-02T09:30:00+01:00"));

  private final ForeignReader reader = new ForeignReader(Catalogue.standard(), Options.usual());

  private Reading read(String json) {
    return reader.read(json).orThrow();
  }

  private static String answered(String note) {
    return FilledForm.json(NoteReader.exam(HEADER, note).orThrow());
  }

  /** Returns an item with one answer. */
  private static Map<String, Object> item(String name, String kind, Object value) {
    return Map.of("linkId", name, "answer", List.of(Map.of(kind, value)));
  }

  private static String response(Object... items) {
    return PlainJson.of(
        Map.of(
            "resourceType",
            "QuestionnaireResponse",
            "questionnaire",
            Form.URL + "|0.1.0",
            "status",
            "completed",
            "authored",
            "2026-03-02T09:30:00+01:00",
            "subject",
            Map.of("identifier", Map.of("value", "p-17")),
            "item",
            List.of(items)));
  }

  private void isKept(String json, String where) {
    Reading reading = read(json);
    assertEquals(List.of(), reading.exams(), json);
    assertTrue(
        ((ResourceOutcome.Kept) reading.resources().get(0).outcome())
            .reasons()
            .toString()
            .contains(where),
        reading.resources().get(0).outcome()::toString);
  }

  @Test
  void readsTheFactsThatWereAnswered() {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new Random(202611));
    int read = 0;
    for (int i = 0; i < 150; i++) {
      Exam drawn = exams.next();
      List<Fact<?>> facts = drawn.facts().stream().filter(fact -> fact.at().isEmpty()).toList();
      if (!facts.isEmpty() && drawn.header().status() != Status.ENTERED_IN_ERROR) {
        Exam exam = new Exam(HEADER, facts);
        Reading reading = read(FilledForm.json(exam));
        assertEquals(1, reading.exams().size(), () -> reading.resources().toString());
        assertEquals(facts, reading.exams().get(0).exam().facts());
        assertEquals(HEADER.performed(), reading.exams().get(0).exam().header().performed());
        assertEquals(HEADER.subject(), reading.exams().get(0).exam().header().subject());
        read++;
      }
    }
    assertTrue(read > 75, "only " + read);
  }

  @Test
  void keepsDigitsAndUnits() {
    Reading reading = read(answered("IOP R 14.0 GAT; VA L 0.30 logMAR; pupils R 4.0 mm dim"));
    assertTrue(
        reading.exams().get(0).exam().facts().toString().contains("14.0"),
        reading.exams()::toString);
    assertEquals(
        NoteReader.exam(HEADER, "IOP R 14.0 GAT; VA L 0.30 logMAR; pupils R 4.0 mm dim")
            .orThrow()
            .facts(),
        reading.exams().get(0).exam().facts());
  }

  @Test
  void accountsForEveryLeaf() {
    Reading reading =
        read(answered("IOP R 14 GAT").replace("{\n  \"res", "{\n  \"language\": \"en\",\n  \"res"));
    ResourceOutcome.Translated outcome =
        (ResourceOutcome.Translated) reading.resources().get(0).outcome();
    assertEquals(
        reading.resources().get(0).resource().leaves().size(),
        outcome.taken().size() + outcome.leftover().size());
    assertTrue(outcome.leftover().toString().contains("/language"), outcome.leftover()::toString);
  }

  @Test
  void takesNothingWhereAnAnswerIsNotUnderstood() {
    String pressure = "intraocular-pressure/right/value";
    Map<String, Object> right = item(pressure, "valueString", "14");
    assertEquals(1, read(response(right)).exams().size());
    isKept(
        response(right, item("intraocular-pressure/left/value", "valueString", "x")),
        "intraocular-pressure/left/value");
    isKept(
        response(right, item("intraocular-pressure/up/value", "valueString", "9")),
        "a question of the form");
    isKept(response(right, item("mood", "valueString", "good")), "a question of the form");
    isKept(response(right, right), "a second answer");
    isKept(response(item(pressure, "valueString", "1400")), pressure);
    isKept(response(item(pressure, "valueString", "014")), pressure);
    isKept(response(item(pressure, "valueString", "14 kPa")), pressure);
    isKept(response(item(pressure, "valueBoolean", true)), "another kind of answer");
    isKept(
        response(right, item("intraocular-pressure/right/absent", "valueString", "not-done")),
        "another kind");
    isKept(response(), "no answer");
  }

  @Test
  void takesNoResultBesideAReasonForNone() {
    Map<String, Object> reason =
        item(
            "intraocular-pressure/right/absent",
            "valueCoding",
            Map.of(
                "system",
                Form.REASONS.concepts().get(0).code().system(),
                "code",
                Form.REASONS.concepts().get(0).code().code()));
    assertEquals(1, read(response(reason)).exams().size());
    isKept(
        response(reason, item("intraocular-pressure/right/value", "valueString", "14")),
        "intraocular-pressure/right");
  }

  /** What a form shows, and where, is of the eye that its question names. */
  @Test
  void takesNoAnswerThatItsSurroundingsContradict() {
    String question = "\"linkId\": \"intraocular-pressure/right/value\"";
    String json = answered("IOP R 14 GAT");
    assertTrue(json.contains(question), json);
    String same = json.replace(question, question + ", \"text\": \"Pressure, right eye\"");
    assertEquals(1, read(same).exams().size());
    isKept(same.replace("right eye", "left eye"), "words of another eye");
    assertEquals(1, read(same.replace("Pressure", "Pressure in mmHg")).exams().size());
    isKept(same.replace("Pressure", "Pressure in kPa"), "kPa");
    isKept(
        same.replaceFirst("(\"value(String|Decimal)\":)", "\"_valueString\": {\"id\": \"x\"}, $1"),
        "extension");
    String extension = ", \"extension\": [{\"url\": \"https://x.example/doubt\"}]";
    isKept(json.replace(question, question + extension), "an extension");
    isKept(
        json.replaceFirst("(\"value(String|Decimal)\": [^,}\\s]+)", "$1" + extension), "extension");
    String gaze = answered("EOM R abduction -2, rest full");
    String shown =
        gaze.replace("/right/left\"", "/right/left\", \"text\": \"Left (a whole number)\"");
    assertTrue(!shown.equals(gaze), gaze);
    assertEquals(1, read(shown).exams().size());
    Map<String, Object> left = item("intraocular-pressure/left/value", "valueString", "14");
    isKept(
        response(Map.of("linkId", "intraocular-pressure/right", "item", List.of(left))),
        "its own group");
  }

  @Test
  void keepsWhatIsRetractedOrUndated() {
    String json = answered("IOP R 14 GAT");
    isKept(json.replace("completed", "entered-in-error"), "retracted");
    isKept(json.replace("completed", "stopped"), "retracted");
    isKept(json.replace("2026-03-02T09:30:00+01:00", "2026-03-02"), "no-time");
    isKept(
        json.replace("{\n  \"res", "{\n  \"modifierExtension\": [{\"url\": \"x\"}],\n  \"res"),
        "modified");
  }

  @Test
  void leavesTheFormsOfOthersAlone() {
    String json = answered("IOP R 14 GAT").replace(Form.URL, "https://other.example/form");
    assertEquals(List.of(), read(json).exams());
  }
}
