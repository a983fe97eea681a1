package org.isopter.model.letter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.derive.Derivations;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.text.FactText;
import org.isopter.model.text.PlainWords;
import org.isopter.model.value.Absence;
import org.isopter.model.value.AcuityText;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;

/** Every line of a letter names the eyes that it is true of, and no others. */
class LetterEyesTest {

  private static final OffsetDateTime NOW = OffsetDateTime.parse("2026-03-02T09:30:00+01:00");

  private static Summary summary(Fact<?>... facts) {
    Header header = Header.of(Identifier.of("r-1"), Party.of(Identifier.of("p-1")), NOW);
    return Summary.of(new Exam(header, Arrays.asList(facts)));
  }

  private static Fact<AcuityReading> acuity(Site eye, String text, Correction through) {
    AcuityReading reading = AcuityReading.of(AcuityText.parse(text).orThrow());
    return Fact.of(Acuities.DISTANCE, eye, reading.through(through));
  }

  @Test
  void oneEyeReadTwiceIsNotEachEye() {
    List<String> lines =
        summary(
                acuity(Site.RIGHT, "6/6", Correction.UNAIDED),
                acuity(Site.RIGHT, "6/6", Correction.SPECTACLES),
                acuity(Site.LEFT, "6/60", Correction.SPECTACLES))
            .detail();
    assertFalse(lines.stream().anyMatch(line -> line.startsWith("Each eye")), lines.toString());
    assertTrue(lines.stream().anyMatch(line -> line.startsWith("Right eye: 6/6 is")));
    assertTrue(lines.stream().anyMatch(line -> line.startsWith("Left eye: 6/60 is")));
  }

  @Test
  void bothEyesOpenReadTwiceIsNotEachEye() {
    List<String> lines =
        summary(
                acuity(Site.RIGHT, "6/60", Correction.UNAIDED),
                acuity(Site.LEFT, "6/60", Correction.UNAIDED),
                acuity(Site.BOTH, "6/6", Correction.UNAIDED),
                acuity(Site.BOTH, "6/6", Correction.SPECTACLES))
            .detail();
    assertTrue(lines.stream().anyMatch(line -> line.startsWith("Each eye: 6/60 is")));
    assertTrue(lines.stream().anyMatch(line -> line.startsWith("Both eyes together: 6/6 is")));
    assertFalse(lines.stream().anyMatch(line -> line.startsWith("Each eye: 6/6 ")));
  }

  @Test
  void whatBothEyesTogetherLackIsNotWhatEitherLacks() {
    List<String> lines =
        summary(
                Fact.absent(Acuities.DISTANCE, Site.RIGHT, Absence.REFUSED),
                Fact.absent(Acuities.DISTANCE, Site.BOTH, Absence.REFUSED),
                acuity(Site.LEFT, "6/9", Correction.UNAIDED))
            .missing();
    assertEquals(
        List.of("Declined, right eye, both eyes together: distance visual acuity."), lines);
    assertEquals(
        List.of("Declined, either eye: distance visual acuity."),
        summary(
                Fact.absent(Acuities.DISTANCE, Site.RIGHT, Absence.REFUSED),
                Fact.absent(Acuities.DISTANCE, Site.LEFT, Absence.REFUSED))
            .missing());
  }

  @Test
  void aTimeOnAnotherDayHasItsDate() {
    Fact<Quantity> pressure =
        Fact.of(Pressures.INTRAOCULAR, Site.RIGHT, Quantity.of("21", Unit.MM_HG));
    Fact<Quantity> before = pressure.at(OffsetDateTime.parse("2026-03-01T22:15:00Z"));
    Fact<Quantity> sameDay = pressure.at(OffsetDateTime.parse("2026-03-02T07:05:00Z"));
    assertEquals("21 mmHg, at 23:15 on 1 March 2026", FactText.of(before, NOW));
    assertEquals("21 mmHg, at 08:05", FactText.of(sameDay, NOW));
  }

  @Test
  void everyConclusionNamesTheEyesThatItIsTrueOf() {
    ExamSampler sampler = new ExamSampler(Catalogue.standard().all(), new Random(20261127));
    for (int i = 0; i < 250; i++) {
      holds(sampler.next());
    }
  }

  private static void holds(Exam exam) {
    Map<String, Set<Site>> sites = new TreeMap<>();
    Derivations.of(exam).stream()
        .filter(one -> one.statement().certainty() != Certainty.CANNOT_TELL)
        .forEach(
            one ->
                sites
                    .computeIfAbsent(one.statement().text(), any -> EnumSet.noneOf(Site.class))
                    .add(one.site()));
    Summary summary = Summary.of(exam);
    assertTrue(summary.detail().size() >= summary.derived().size());
    for (String line : summary.detail()) {
      sites.forEach((text, where) -> agrees(line, text, where));
    }
    summary.missing().forEach(line -> lacks(exam, line));
  }

  private static void agrees(String line, String text, Set<Site> where) {
    if (line.startsWith("Each eye: " + text)) {
      assertTrue(where.containsAll(Site.EACH_EYE), line);
    }
    if (line.startsWith("Right eye: " + text)) {
      assertTrue(where.contains(Site.RIGHT) && !where.contains(Site.LEFT), line);
    }
    if (line.startsWith("Left eye: " + text)) {
      assertTrue(where.contains(Site.LEFT) && !where.contains(Site.RIGHT), line);
    }
    if (line.startsWith(text)) {
      assertTrue(where.contains(Site.BOTH), line);
    }
  }

  private static void lacks(Exam exam, String line) {
    for (Site eye : Site.EACH_EYE) {
      boolean named = line.contains(", either eye") || line.contains(", " + eye.word() + " eye");
      boolean missing =
          exam.facts().stream()
              .anyMatch(
                  fact ->
                      fact.site() == eye
                          && fact.panel().isEmpty()
                          && line.contains(PlainWords.lower(fact.finding().title())));
      assertTrue(!named || missing, line);
    }
  }
}
