package org.isopter.model.note;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.pupil.PupilResponse;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Seen;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Result;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;

/** Shorthand is read without guessing and without loss. */
class NoteReaderTest {

  private static final OffsetDateTime DAY = OffsetDateTime.parse("2026-03-02T09:30:00+01:00");
  private static final Header HEADER =
      Header.of(Identifier.of("e-1"), Party.of(Identifier.of("p-1")), DAY);

  private final NoteReader reader = NoteReader.standard();

  @Test
  void givesTypedFacts() {
    List<Fact<?>> facts = reader.facts("IOP R 14").orThrow();
    assertEquals(
        List.of(Fact.of(Pressures.INTRAOCULAR, Site.RIGHT, Quantity.of("14", Unit.MM_HG))), facts);
  }

  @Test
  void namesPlaceTextReasonAndNearestForm() {
    Unread unread = reader.read("VA R 6/9\n  IOP R 14 foo").unread().get(0);
    assertEquals(2, unread.line());
    assertEquals(12, unread.column());
    assertEquals("IOP R 14 foo", unread.text());
    assertEquals("\"foo\" is not understood here", unread.why());
    assertEquals("IOP R 14 L 16 GAT", unread.nearest());
  }

  @Test
  void readsWellToAClinician() {
    assertEquals(
        "line 1, column 1: \"IOP 14/16\" was not read: no side is named, and a side is never"
            + " guessed. It may mean: IOP R 14 L 16 or IOP R 16 L 14",
        reader.read("IOP 14/16").unread().get(0).toString());
  }

  @Test
  void offersTheWordThatIsMeant() {
    assertEquals("PERRLA", reader.read("PERRLLLA").unread().get(0).nearest());
    assertEquals("disc R swollen", reader.read("disc R swwoleen").unread().get(0).nearest());
    assertTrue(
        reader.read("disc R blurred").unread().get(0).toString().contains("blurred all round"));
  }

  @Test
  void refusesTheWholeNoteWhenOnePieceIsNotUnderstood() {
    assertEquals(1, reader.facts("IOP R 14; disc R odd").faults().size());
    assertEquals("line 1, column 18", reader.facts("IOP R 14; disc R odd").faults().get(0).path());
  }

  @Test
  void doesNotCallAReactivePupilBrisk() {
    Exam exam = NoteReader.exam(HEADER, "PERRLA").orThrow();
    assertEquals(
        List.of(PupilResponse.REACTIVE),
        exam.view().left().seen(Pupils.DIRECT).map(Seen::value).toList());
    assertTrue(exam.view().facts(Pupils.CONSENSUAL).findAny().isEmpty());
  }

  @Test
  void putsATimeOnTheDayOfTheExamination() {
    Exam exam = NoteReader.exam(HEADER, "IOP R 14 10:05").orThrow();
    assertEquals(Optional.of(DAY.withHour(10).withMinute(5)), exam.facts().get(0).at());
  }

  @Test
  void refusesATimeWhenTheDayIsNotKnown() {
    assertFalse(reader.facts("IOP R 14 10:05").isOk());
  }

  @Test
  void keepsWhatItDidNotReadAsARemarkOnTheExamination() {
    Exam exam =
        NoteReader.keepUnread(HEADER, "Tired today. IOP R 14; disc R odd, L pink").orThrow();
    assertEquals(Optional.of("Tired today\ndisc R odd, L pink"), exam.header().remark());
    assertEquals(1, exam.facts().size());
  }

  @Test
  void keepsBothSidesOfAContradictionAsARemark() {
    Exam exam = NoteReader.keepUnread(HEADER, "IOP R 14\nIOP R 16\nRAPD L").orThrow();
    assertEquals(Optional.of("IOP R 14\nIOP R 16"), exam.header().remark());
    assertEquals(1, exam.facts().size());
  }

  @Test
  void refusesToKeepWhatNoRecordCanCarry() {
    Result<Exam> kept = NoteReader.keepUnread(HEADER, "IOP R 14\ndisc R \u0007odd");
    assertEquals("line 2, column 8", kept.faults().get(0).path());
    assertEquals("remove it", kept.faults().get(0).advice());
  }

  @Test
  void takesTheSpacesOfWordProcessorsForSpaces() {
    String typed = "IOP\u00a0R\u202f14.\u2003Disc\u3000L pink";
    assertEquals(reader.facts("IOP R 14. Disc L pink"), reader.facts(typed));
    assertEquals(2, reader.read(typed).facts().size());
  }

  @Test
  void namesBothPlacesOfAContradiction() {
    List<Unread> unread = reader.read("IOP R 14\nIOP R 16").unread();
    assertTrue(unread.get(0).why().contains("14 mmHg here, 16 mmHg at line 2, column 1"));
    assertTrue(unread.get(1).why().contains("16 mmHg here, 14 mmHg at line 1, column 1"));
  }

  @Test
  void holdsAnAbsenceAgainstAValue() {
    assertFalse(reader.facts("IOP not done; IOP R 14").isOk());
  }

  @Test
  void neverLosesANegation() {
    for (String word : List.of("no", "not", "without", "denies", "never", "?")) {
      for (String note : List.of("IOP R %s 14", "VA %s R 6/9", "PERRLA %s", "EOM full %s")) {
        String text = note.formatted(word);
        assertFalse(reader.facts(text).isOk(), text);
      }
    }
  }

  @Test
  void givesNothingForAnEmptyNote() {
    assertEquals(List.of(), reader.facts(" \n\n ; .\n").orThrow());
  }

  @Test
  void reportsAHeadingOfWhichNothingIsTold() {
    assertEquals("nothing is said of it", reader.read("VA cc\n\nIOP R 14").unread().get(0).why());
  }

  @Test
  void doesNotGoOnWithAnItemBehindAnUnknownOne() {
    Note note = reader.read("IOP R 14; exo R 18; L 20");
    assertEquals(1, note.facts().size());
    assertEquals(2, note.unread().size());
  }

  @Test
  void doesNotTakeALineForAnEyeWhenItNamesTheOther() {
    assertEquals(1, reader.read("OD: VA 20/20, IOP 14, disc L pink").unread().size());
  }

  @Test
  void refusesNumbersThatLostTheirPoint() {
    assertFalse(reader.facts("VA R 03 logMAR").isOk());
    assertFalse(reader.facts("IOP R 1.4.2").isOk());
    assertFalse(reader.facts("IOP R 14,5").isOk());
  }
}
