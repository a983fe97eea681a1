package org.isopter.model.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.note.NoteReader;
import org.isopter.model.text.RecordText;
import org.junit.jupiter.api.Test;

/** Answers to the steps of an examination, right ones and wrong ones. */
class GuidedEntryTest {

  private static final OffsetDateTime DAY = OffsetDateTime.parse("2026-03-02T09:30:00+01:00");
  private static final Header HEADER =
      Header.of(Identifier.of("e-1"), Party.of(Identifier.of("p-1")), DAY);

  private final GuidedEntry entry = new GuidedEntry(HEADER, NoteReader.performed(DAY));

  private String enter(String... answers) {
    String lines = "";
    for (String answer : answers) {
      lines = String.join("\n", entry.enter(answer));
    }
    return lines;
  }

  private void at(String step) {
    while (!entry.label().equals(step)) {
      entry.enter("");
    }
  }

  private Set<String> recorded() {
    return entry.exam().facts().stream().map(RecordText::of).collect(Collectors.toSet());
  }

  @Test
  void everyStepTakesItsExampleItsNormalAndThatItWasNotDone() {
    for (UsualStep step : UsualStep.ASKED) {
      String title = step.question().title();
      for (String example : step.question().example().split(", or ", -1)) {
        GuidedEntry one = new GuidedEntry(HEADER, NoteReader.performed(DAY));
        while (!one.label().equals(title)) {
          one.enter("");
        }
        one.enter(example);
        assertFalse(one.label().equals(title), title + ": " + example);
        one.enter("b");
        one.enter("x refused");
        assertFalse(one.label().equals(title), title + " refused");
        assertTrue(
            one.exam().facts().stream().map(Fact::outcome).allMatch(o -> o.ifAbsent().isPresent()));
        assertEquals(
            List.of(), one.missing().stream().filter(name -> name.startsWith(title)).toList());
      }
    }
  }

  @Test
  void anAnswerWithAHeadingIsOfWhatItNames() {
    at("pinhole");
    assertTrue(enter("VA sc R 6/9 L 6/6").contains("pinhole is still open"));
    assertTrue(enter("IOP R 14 GAT").contains("this is of pressure"));
    assertTrue(enter("stereo 60\" TNO").contains("asked by no step"));
    assertEquals(4, entry.exam().facts().size());
    assertTrue(recorded().contains("right distance-acuity 6/9 (correction unaided)"));
    enter("R 6/6");
    assertTrue(recorded().contains("right pinhole-acuity 6/6"), recorded().toString());
  }

  @Test
  void anAcuityWithoutAHeadingIsASlipElsewhere() {
    at("disc");
    assertTrue(enter("R 6/9").contains("not read"));
    assertEquals(Set.of(), recorded());
  }

  @Test
  void takesNothingThatContradicts() {
    enter("sc R 6/9 L 6/6");
    String lines = enter("VA sc R 6/12");
    assertTrue(lines.contains("not taken"), lines);
    assertTrue(recorded().toString().contains("6/9"), recorded().toString());
    assertFalse(recorded().toString().contains("6/12"), recorded().toString());
  }

  @Test
  void takesAsReasonOnlyWhyThereIsNoResult() {
    assertTrue(enter("x R 6/9").contains("x takes a reason"));
    assertTrue(enter("x because").contains("x takes a reason"));
    assertEquals(Set.of(), recorded());
    enter("X R refused");
    assertEquals(Set.of("right distance-acuity absent: refused"), recorded());
    assertTrue(entry.missing().contains("acuity, left eye"), entry.missing().toString());
  }

  @Test
  void goesBackAndAddsAndTakesAway() {
    enter("sc R 6/9", "b", "+ sc L 6/6");
    assertEquals(2, entry.exam().facts().size());
    enter("b", "-");
    assertEquals(Set.of(), recorded());
    assertTrue(enter("b").contains("first step"));
  }

  @Test
  void endsOnlyWhenItIsToldTo() {
    at("end");
    assertTrue(enter("").contains("nothing is recorded yet"));
    enter("disc");
    assertEquals("disc", entry.label());
    enter("n");
    at("end");
    assertFalse(entry.isDone());
    enter("");
    assertTrue(entry.isDone());
  }

  @Test
  void understandsEveryKindOfWrongInputAsNothing() {
    for (String wrong :
        List.of(
            "7",
            "99",
            "0",
            "B B",
            "nn",
            "xx",
            "x x",
            "\u0007",
            "\u001b[A",
            "; ; ;",
            "--",
            "+",
            "+ n",
            "R",
            "OU",
            "?!",
            "normal",
            "\u00a0",
            "6/",
            "R 6/9 L")) {
      enter(wrong);
      assertEquals(Set.of(), recorded(), wrong);
    }
  }

  @Test
  void goesOnFromADraftOrSaysWhyNot() {
    enter("sc each 6/6", "", "each N5");
    String draft = entry.draft().write();
    GuidedEntry next = new GuidedEntry(HEADER, NoteReader.performed(DAY));
    next.resume(EntryDraft.read(draft).orThrow()).orThrow();
    assertEquals(entry.exam(), next.exam());
    assertEquals("pupils", next.label());
    assertFalse(EntryDraft.read(draft + "nonsense\n").isOk());
    assertFalse(EntryDraft.read(draft.replace("performed", "when")).isOk());
    assertFalse(EntryDraft.read(draft.replace("2026-", "soon ")).isOk());
    assertFalse(next.resume(EntryDraft.read(draft.replace("N5", "N what")).orThrow()).isOk());
  }
}
