package org.isopter.model.letter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Pattern;
import org.isopter.model.answer.tissue.GlobeState;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.Globes;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.note.NoteReader;
import org.isopter.model.text.FactText;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;

class SummaryTest {

  private static final long SEED = Long.getLong("seed", 5L);

  private static Exam exam(Fact<?>... facts) {
    Header header =
        Header.of(
            Identifier.of("r"), Party.named("A | B"), OffsetDateTime.parse("2026-03-03T09:10:00Z"));
    return new Exam(header, Arrays.asList(facts));
  }

  private static Fact<Quantity> pressure(Site eye, String mmHg) {
    return Fact.of(Pressures.INTRAOCULAR, eye, Quantity.of(mmHg, Unit.MM_HG));
  }

  @Test
  void setsTheEyesSideBySideAndSaysWhatWasNotDone() {
    Exam exam =
        exam(
            pressure(Site.RIGHT, "14"),
            Fact.absent(Pressures.INTRAOCULAR, Site.LEFT, Absence.REFUSED));
    Summary summary = Summary.of(exam);
    assertEquals(List.of(new Summary.Row("Pressure", "14 mmHg", "")), summary.rows());
    assertEquals(List.of("Declined, left eye: intraocular pressure."), summary.missing());
  }

  @Test
  void namesNothingInAnEyeThatCouldNotBeSeenInto() {
    Exam exam = noted("disc R no view; disc L pink");
    String silent = Summary.of(exam).silent().orElseThrow();
    assertFalse(silent.contains("optic disc"), silent);
    assertTrue(silent.contains("left eye: signs at the back of the eye"), silent);
    String seen = Summary.of(noted("view R clear; disc L pink")).silent().orElseThrow();
    assertTrue(seen.contains("right eye: optic disc"), seen);
  }

  private static Exam noted(String note) {
    OffsetDateTime when = OffsetDateTime.parse("2026-03-02T09:00:00+01:00");
    Header header = Header.of(Identifier.of("noted"), Party.of(Identifier.of("p-1")), when);
    return new Exam(header, NoteReader.performed(when).facts(note).orThrow());
  }

  @Test
  void keepsMarksThatPeopleWroteAsText() {
    String page = Letter.markdown().write(Summary.of(exam()));
    assertTrue(page.startsWith("# Eye examination: A \\| B\n"), page);
  }

  /** College of Optometrists, "Urgency of referrals", C205: 40 mmHg or more; both discs swollen. */
  @Test
  void namesWhatIsOnTheListWhenAskedForIt() {
    Exam high = exam(pressure(Site.RIGHT, "40"), pressure(Site.LEFT, "39.5"));
    assertEquals(
        List.of("An intraocular pressure of 40 mmHg or more is on the list: right eye."),
        UrgencyRules.UK_C205.hints(high));
    Fact<Discs.Swelling> right = swollen(Site.RIGHT);
    assertEquals(
        List.of(
            "A swollen disc is on the list where the other is swollen too: right eye; the record"
                + " does not say whether the other is."),
        UrgencyRules.UK_C205.hints(exam(right)));
    assertEquals(
        List.of("Swollen discs in both eyes are on the list; blood pressure first."),
        UrgencyRules.UK_C205.hints(exam(right, swollen(Site.LEFT))));
    assertFalse(Letter.text().write(Summary.of(high)).contains("on the list"));
  }

  private static Fact<Discs.Swelling> swollen(Site eye) {
    return Fact.of(Discs.SWELLING, eye, new Discs.Swelling(Presence.PRESENT, Optional.empty()));
  }

  /**
   * Words of programs: constants, keys with hyphens between letters of a list, Java's collections.
   */
  @Test
  void usesNoWordOfAProgram() {
    Pattern program = Pattern.compile("\\b[A-Z]{2,}_[A-Z_]+\\b|Optional|\\{|\\bnull\\b|\\[\\]");
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new Random(SEED));
    for (int i = 0; i < 300; i++) {
      Exam exam = exams.next();
      for (Fact<?> fact : exam.facts()) {
        String words = FactText.words(fact, exam.header().performed()).value(", ");
        assertFalse(program.matcher(words).find(), "seed " + SEED + ": " + words);
        assertFalse(words.isBlank(), "seed " + SEED + ": " + fact);
      }
    }
  }

  /** A usual examination is missed where there is an eye, and only what was not recorded of it. */
  @Test
  void missesNothingOfAnEyeThatIsGoneNorWhatStandsUnderAnotherName() {
    Exam exam =
        exam(
            Fact.of(Globes.STATE, Site.LEFT, GlobeState.PROSTHESIS),
            Fact.of(Discs.UNDIRECTED_CUP, Site.RIGHT, new BigDecimal("0.3")));
    String text = Summary.of(exam).silent().orElseThrow();
    assertTrue(
        text.contains("Not recorded, right eye: acuity at distance, size of the pupil,"), text);
    assertFalse(text.contains("optic disc,"), text);
    assertFalse(text.contains("either eye:"), text);
  }
}
