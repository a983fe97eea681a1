package org.isopter.model.letter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.pupil.PupilResponse;
import org.isopter.model.answer.tissue.DiscColour;
import org.isopter.model.answer.tissue.DiscMargin;
import org.isopter.model.answer.tissue.FundusMethod;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.clinical.statement.Caution;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Shapes;
import org.isopter.model.text.FactText;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;

/** What stands on the page, and where. */
class LetterTest {

  private static final OffsetDateTime NOW = OffsetDateTime.parse("2026-03-02T09:30:00+01:00");

  private static Exam exam(Fact<?>... facts) {
    Header header = Header.of(Identifier.of("r-1"), Party.of(Identifier.of("p-1")), NOW);
    return new Exam(header, Arrays.asList(facts));
  }

  private static String page(Fact<?>... facts) {
    return Letter.text().write(Summary.of(exam(facts)));
  }

  private static String flat(String page) {
    return page.replaceAll("\\s+", " ");
  }

  @Test
  void hasTheCautionEvenWhereNothingFollows() {
    assertTrue(flat(page()).contains(Caution.TEXT));
    assertTrue(Letter.markdown().write(Summary.of(exam())).contains(Caution.TEXT));
    assertTrue(flat(Letter.text().detailed().write(Summary.of(exam()))).contains(Caution.TEXT));
  }

  @Test
  void saysOfTheAfferentDefectWhatIsRecordedBeforeAllElse() {
    Fact<?> pressure = Fact.of(Pressures.INTRAOCULAR, Site.RIGHT, Quantity.of("14", Unit.MM_HG));
    String title = Pupils.AFFERENT_DEFECT.title();
    assertEquals(
        title + ": not recorded.", page(pressure).split("\n", -1)[2], "said though nobody looked");
    assertEquals(
        title + ": not done.",
        page(pressure, Fact.absent(Pupils.AFFERENT_DEFECT, Site.BOTH, Absence.NOT_DONE))
            .split("\n", -1)[2]);
    assertEquals(
        title + ": right.",
        page(
                pressure,
                Fact.of(
                    Pupils.AFFERENT_DEFECT, Site.BOTH, Pupils.AfferentDefect.of(DefectSide.RIGHT)))
            .split("\n", -1)[2]);
  }

  @Test
  void namesWhatNobodyMentionedAndOfWhichEye() {
    Fact<?> right = Fact.of(Pupils.DIRECT, Site.RIGHT, PupilResponse.BRISK);
    Fact<?> notDone = Fact.absent(Pupils.DIRECT, Site.LEFT, Absence.NOT_DONE);
    assertTrue(silent(right).contains("left eye: response to light;"), silent(right));
    assertFalse(silent(right, notDone).contains("response to light"));
    assertTrue(silent().contains("either eye: acuity at distance, size of the pupil, "));
    assertFalse(silent().contains("normal"));
  }

  private static String silent(Fact<?>... facts) {
    return Summary.of(exam(facts)).silent().orElse("");
  }

  @Test
  void aTechniqueReachesNoFurtherThanWhatItFound() {
    Fact<?> margin = Fact.of(Discs.MARGIN, Site.RIGHT, DiscMargin.CLEAR).by(FundusMethod.SLIT_LAMP);
    Fact<?> colour =
        Fact.of(Discs.COLOUR, Site.RIGHT, Discs.Colour.of(DiscColour.PINK))
            .by(FundusMethod.SLIT_LAMP);
    Fact<?> elsewise = Fact.of(Discs.COLOUR, Site.RIGHT, Discs.Colour.of(DiscColour.PINK));
    assertEquals("Slit lamp: margin clear; colour pink", disc(margin, colour));
    assertEquals("margin clear, slit lamp; colour pink", disc(margin, elsewise));
    assertEquals(
        "Slit lamp: margin clear; colour pink. Colour pink", disc(margin, colour, elsewise));
  }

  private static String disc(Fact<?>... facts) {
    return Summary.of(exam(facts)).rows().get(0).right();
  }

  @Test
  void givesAFindingThatItDoesNotKnowARowOfItsOwn() {
    Finding<Quantity> own =
        Finding.of("own-length", "Length of the eye")
            .value(Shapes.measure(Unit.MILLIMETRE, "10", "40", 2))
            .cite("common practice, no source")
            .build();
    Fact<Quantity> fact = Fact.of(own, Site.LEFT, Quantity.of("23.5", Unit.MILLIMETRE));
    assertEquals(
        List.of(new Summary.Row("Length of the eye", "", "23.5 mm")),
        Summary.of(exam(fact)).rows());
  }

  @Test
  void saysEveryFactOfAnExamination() {
    ExamSampler sampler = new ExamSampler(Catalogue.standard().all(), new Random(45));
    for (int i = 0; i < 300; i++) {
      Exam exam = sampler.next();
      Summary summary = Summary.of(exam);
      String all =
          (summary.defect()
                  + " "
                  + summary.rows()
                  + " "
                  + summary.together()
                  + " "
                  + summary.missing())
              .toLowerCase(Locale.ROOT);
      for (Fact<?> fact : exam.facts()) {
        String words = FactText.words(fact, NOW).value(", ").toLowerCase(Locale.ROOT);
        assertTrue(all.contains(words), words + " is not in " + all);
        String remarks = FactText.remarks(FactText.words(fact, NOW)).toLowerCase(Locale.ROOT);
        assertTrue(all.contains(remarks), remarks + " is not in " + all);
      }
    }
  }

  @Test
  void keepsEachEyeInItsOwnColumn() {
    ExamSampler sampler = new ExamSampler(Catalogue.standard().all(), new Random(46));
    for (int i = 0; i < 300; i++) {
      Exam exam = sampler.next();
      for (Fact<?> fact : exam.facts()) {
        String words = FactText.words(fact, NOW).value(", ").toLowerCase(Locale.ROOT);
        if (fact.panel().isPresent() && fact.site() != Site.BOTH) {
          assertTrue(
              Summary.of(exam).rows().stream()
                  .map(row -> fact.site() == Site.RIGHT ? row.right() : row.left())
                  .map(cell -> cell.toLowerCase(Locale.ROOT))
                  .anyMatch(cell -> cell.contains(words)),
              fact.toString());
        }
      }
    }
  }

  @Test
  void readsTheSameWhereTheEyesChangePlaces() {
    Fact<?> right = Fact.absent(Pupils.SIZE, Site.RIGHT, Absence.REFUSED);
    Fact<?> left = Fact.absent(Pupils.SIZE, Site.LEFT, Absence.REFUSED);
    assertEquals(
        Optional.of("Declined, right eye: size of pupil."),
        Summary.of(exam(right)).missing().stream().findFirst());
    assertEquals(
        Optional.of("Declined, left eye: size of pupil."),
        Summary.of(exam(left)).missing().stream().findFirst());
    assertEquals(
        List.of("Declined, either eye: size of pupil."), Summary.of(exam(right, left)).missing());
  }
}
