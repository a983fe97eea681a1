package org.isopter.model.letter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.Lighting;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.Lids;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.text.FactText;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;

/** A letter says nothing of a side that was not recorded, and leaves out nothing that was. */
class LetterSidesTest {

  private static final OffsetDateTime NOW = OffsetDateTime.parse("2026-03-02T09:30:00+01:00");

  private static void eachSample(Consumer<Exam> test) {
    ExamSampler sampler = new ExamSampler(Catalogue.standard().all(), new Random(20261128));
    for (int i = 0; i < 300; i++) {
      test.accept(sampler.next());
    }
  }

  private static Exam only(Exam exam, Site site) {
    return new Exam(
        exam.header(), exam.facts().stream().filter(fact -> fact.site() == site).toList());
  }

  private static Stream<String> lines(Summary summary) {
    return Stream.of(summary.derived(), summary.detail(), summary.missing(), summary.together())
        .flatMap(List::stream);
  }

  @Test
  void oneEyeThatWasExaminedGivesNothingOfItsFellow() {
    for (Site eye : Site.EACH_EYE) {
      String fellow = eye.fellow().word() + " eye";
      eachSample(
          exam -> {
            Summary summary = Summary.of(only(exam, eye));
            summary
                .rows()
                .forEach(row -> assertEquals("", eye == Site.RIGHT ? row.left() : row.right()));
            lines(summary).forEach(line -> saysNothingOf(fellow, line));
          });
    }
  }

  /** A place of the body may lie on the other side; a subject of a sentence may not. */
  private static void saysNothingOf(String fellow, String line) {
    String lower = line.toLowerCase(java.util.Locale.ROOT);
    assertFalse(lower.startsWith(fellow) || lower.startsWith("each eye"), line);
    assertFalse(lower.startsWith("both eyes"), line);
    assertFalse(lower.contains(", either eye") || lower.contains(", " + fellow + ":"), line);
  }

  @Test
  void whatBothEyesShowedTogetherIsOfNeitherEyeApart() {
    eachSample(
        exam -> {
          Summary summary = Summary.of(only(exam, Site.BOTH));
          assertTrue(summary.rows().isEmpty(), summary.rows().toString());
          summary
              .missing()
              .forEach(
                  line ->
                      assertFalse(
                          line.contains("either eye")
                              || line.contains("right eye")
                              || line.contains("left eye"),
                          line));
          summary.derived().forEach(line -> assertFalse(line.startsWith("Each eye"), line));
        });
  }

  @Test
  void everyTimeOfItsOwnStandsInTheLetter() {
    eachSample(
        exam -> {
          String page = String.join("\n", pieces(Summary.of(exam)));
          exam.facts().stream()
              .filter(fact -> fact.at().isPresent())
              .forEach(
                  fact -> {
                    List<String> context =
                        FactText.words(fact, exam.header().performed()).context();
                    assertTrue(page.contains(context.get(context.size() - 1)), page);
                  });
        });
  }

  private static List<String> pieces(Summary summary) {
    return Stream.of(
            summary.defect().stream(),
            summary.rows().stream().flatMap(row -> Stream.of(row.right(), row.left())),
            summary.together().stream(),
            summary.missing().stream())
        .flatMap(pieces -> pieces)
        .toList();
  }

  private static List<String> hints(Fact<?>... facts) {
    Header header = Header.of(Identifier.of("r-1"), Party.of(Identifier.of("p-1")), NOW);
    return UrgencyRules.UK_C205.hints(new Exam(header, Arrays.asList(facts)));
  }

  private static Fact<Pupils.Size> pupil(Site eye, String millimetres) {
    Quantity size = Quantity.of(millimetres, Unit.MILLIMETRE);
    return Fact.of(Pupils.SIZE, eye, new Pupils.Size(size, Lighting.ROOM));
  }

  private static Fact<Lids.Ptosis> lowLid(Site eye) {
    return Fact.of(Lids.PTOSIS, eye, new Lids.Ptosis(Presence.PRESENT, Optional.empty()));
  }

  @Test
  void unequalPupilsAreUnequalAtOneTime() {
    OffsetDateTime later = NOW.plusHours(3);
    assertEquals(
        1, hints(lowLid(Site.RIGHT), pupil(Site.RIGHT, "3"), pupil(Site.LEFT, "5")).size());
    assertEquals(
        List.of(),
        hints(lowLid(Site.RIGHT), pupil(Site.RIGHT, "3"), pupil(Site.LEFT, "5").at(later)));
    assertEquals(
        1,
        hints(
                lowLid(Site.RIGHT),
                pupil(Site.RIGHT, "5"),
                pupil(Site.LEFT, "5"),
                pupil(Site.RIGHT, "3").at(later),
                pupil(Site.LEFT, "5").at(later))
            .size());
  }

  @Test
  void aPressureIsOnTheListOfItsEyeAlone() {
    Fact<Quantity> high = Fact.of(Pressures.INTRAOCULAR, Site.LEFT, Quantity.of("40", Unit.MM_HG));
    assertTrue(hints(high).get(0).endsWith(": left eye."), hints(high).toString());
    assertEquals(
        List.of(),
        hints(Fact.of(Pressures.INTRAOCULAR, Site.LEFT, Quantity.of("39.9", Unit.MM_HG))));
  }

  @Test
  void aSwollenDiscIsOnTheListUnlessTheOtherIsFlat() {
    Discs.Swelling doubtful = new Discs.Swelling(Presence.EQUIVOCAL, Optional.empty());
    Discs.Swelling none = new Discs.Swelling(Presence.ABSENT, Optional.empty());
    Fact<?> right = Fact.of(Discs.SWELLING, Site.RIGHT, doubtful);
    assertTrue(hints(right).get(0).contains("does not say whether the other is"));
    assertEquals(List.of(), hints(right, Fact.of(Discs.SWELLING, Site.LEFT, none)));
    assertEquals(1, hints(right, Fact.of(Discs.SWELLING, Site.LEFT, doubtful)).size());
  }
}
