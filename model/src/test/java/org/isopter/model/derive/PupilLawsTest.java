package org.isopter.model.derive;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.isopter.model.answer.movement.GazeDirection;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.pupil.DilatingDrug;
import org.isopter.model.answer.pupil.PupilEquality;
import org.isopter.model.catalogue.Drops;
import org.isopter.model.catalogue.Lids;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.catalogue.Segments;
import org.isopter.model.clinical.pupil.PupilCause;
import org.isopter.model.clinical.pupil.PupilReading;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;
import org.junit.jupiter.api.Test;

/** What holds of every conclusion from the pupils, over facts drawn from a fixed seed. */
class PupilLawsTest {

  private static final long SEED = Long.getLong("seed", 20261127L);
  private static final OffsetDateTime WHEN = OffsetDateTime.parse("2026-03-02T09:00:00+01:00");

  private static final List<Finding<?>> FINDINGS =
      List.of(
          Pupils.SIZE,
          Pupils.SIZE,
          Pupils.SIZE,
          Pupils.EQUALITY,
          Pupils.OUTLINE,
          Pupils.DIRECT,
          Pupils.DIRECT,
          Pupils.CONSENSUAL,
          Pupils.NEAR,
          Pupils.AFFERENT_DEFECT,
          Pupils.FEATURE,
          Lids.PTOSIS,
          Lids.SWEATING,
          Movements.DUCTIONS,
          Movements.DIPLOPIA,
          Pressures.INTRAOCULAR,
          Segments.ANTERIOR,
          Drops.TEST);

  private final Random random = new Random(SEED);
  private final ExamSampler sampler = new ExamSampler(FINDINGS, random);

  private List<Fact<?>> facts() {
    List<Fact<?>> facts = new ArrayList<>();
    for (int wanted = 1 + random.nextInt(9); facts.size() < wanted; ) {
      fact().ifPresent(facts::add);
    }
    return facts;
  }

  /** One that was found, without time or instrument. */
  private Optional<Fact<?>> fact() {
    return bare(sampler.fact(FINDINGS.get(random.nextInt(FINDINGS.size()))));
  }

  private static <V> Optional<Fact<?>> bare(Fact<V> fact) {
    return fact.outcome().ifFound().map(value -> Fact.of(fact.finding(), fact.site(), value));
  }

  private static Exam exam(List<Fact<?>> facts) {
    return new Exam(
        Header.of(Identifier.of("drawn"), Party.of(Identifier.of("someone")), WHEN), facts);
  }

  private static List<Derived> ofPupils(List<Fact<?>> facts) {
    return Derivations.of(exam(facts)).stream()
        .filter(one -> one.statement().id().startsWith("pupils."))
        .toList();
  }

  @Test
  void addsNoCertaintyWithAFactAgainstACause() {
    int against = 0;
    for (int i = 0; i < 1500; i++) {
      List<Fact<?>> facts = facts();
      PupilReading before = reading(facts);
      boolean said = isSaid(facts);
      fact().ifPresent(facts::add);
      PupilReading after = reading(facts);
      if (said && isSaid(facts) && lost(before, after)) {
        against++;
        assertFalse(
            before.statement().certainty() != Certainty.ONE_FITS
                && after.statement().certainty() == Certainty.ONE_FITS,
            () -> "seed " + SEED + ": " + facts + ": " + before + " then " + after);
      }
    }
    assertTrue(against > 110, against + " facts against a cause");
  }

  private static PupilReading reading(List<Fact<?>> facts) {
    ExamView view = ExamView.of(exam(facts));
    return PupilReading.of(PupilSignReader.of(view, new PupilPairs(view)).signs());
  }

  private static boolean isSaid(List<Fact<?>> facts) {
    return ofPupils(facts).stream().anyMatch(one -> one.statement().id().equals("pupils.table"));
  }

  private static boolean lost(PupilReading before, PupilReading after) {
    return !new HashSet<>(after.fitting()).containsAll(before.fitting());
  }

  @Test
  void neverNamesHarmlessCausesAlone() {
    int named = 0;
    for (int i = 0; i < 1500; i++) {
      List<Fact<?>> facts = facts();
      PupilReading reading = reading(facts);
      boolean names = reading.statement().text().contains("What fits");
      named += names ? 1 : 0;
      assertFalse(
          names && reading.fitting().stream().noneMatch(PupilCause::grave), () -> facts.toString());
      assertTrue(!names || reading.fitting().get(0).grave(), () -> facts.toString());
    }
    assertTrue(named > 350, named + " named causes");
  }

  @Test
  void fallsSilentWithEveryDilatingDrop() {
    List<DilatingDrug> drugs = List.of(DilatingDrug.values());
    for (int i = 0; i < 1200; i++) {
      List<Fact<?>> facts = facts();
      Site eye = Site.EACH_EYE.get(random.nextInt(2));
      DilatingDrug drug = drugs.get(random.nextInt(drugs.size()));
      facts.add(
          random.nextInt(facts.size()),
          Fact.of(Drops.DILATION, eye, new Drops.Dilation(drug, Optional.empty())));
      List<Derived> said = ofPupils(facts);
      assertTrue(said.size() <= 1, said::toString);
      for (Derived one : said) {
        assertEquals(Certainty.CANNOT_TELL, one.statement().certainty());
        assertTrue(one.statement().text().startsWith("Nothing is concluded"), one.toString());
      }
    }
  }

  @Test
  void mirrorsEveryStatementWithItsFacts() {
    for (int i = 0; i < 1200; i++) {
      List<Fact<?>> facts = facts();
      List<Fact<?>> mirrored = new ArrayList<>();
      facts.forEach(fact -> mirrored.add(mirrored(fact)));
      List<String> seen = pieces(ofPupils(facts), false);
      List<String> turned = pieces(ofPupils(mirrored), true);
      assertEquals(List.of(), without(seen, turned), () -> "seed " + SEED + ": " + facts);
      assertEquals(List.of(), without(turned, seen), () -> "seed " + SEED + ": " + facts);
    }
  }

  private static List<String> without(List<String> all, List<String> some) {
    List<String> rest = new ArrayList<>(all);
    some.forEach(rest::remove);
    return rest;
  }

  /** What is said, in pieces of no order, since right stands before left. */
  private static List<String> pieces(List<Derived> said, boolean mirrored) {
    return said.stream()
        .flatMap(
            one ->
                Stream.concat(
                    Stream.of(
                        one.statement().id()
                            + " "
                            + one.site().word()
                            + " "
                            + one.statement().certainty()),
                    Arrays.stream(one.statement().text().split("[;:.,()]| looking | and ", -1))
                        .map(piece -> one.statement().id() + " " + piece.trim())))
        .map(piece -> mirrored ? swapped(piece) : piece)
        .map(String::trim)
        .sorted()
        .toList();
  }

  private static String swapped(String text) {
    return text.replaceAll("\\bright\\b", "\1")
        .replaceAll("\\bleft\\b", "right")
        .replace("\1", "left");
  }

  @SuppressWarnings("unchecked")
  private static <V> Fact<V> mirrored(Fact<V> fact) {
    Object value = fact.outcome().ifFound().orElseThrow();
    Site site = fact.site().fellow();
    if (value instanceof Pupils.AfferentDefect defect) {
      return (Fact<V>) Fact.of(Pupils.AFFERENT_DEFECT, site, mirrored(defect));
    }
    if (value instanceof PupilEquality equality) {
      return (Fact<V>) Fact.of(Pupils.EQUALITY, site, mirrored(equality));
    }
    return value instanceof Movements.Ductions moves
        ? (Fact<V>) Fact.of(Movements.DUCTIONS, site, mirrored(moves))
        : Fact.of(fact.finding(), site, fact.outcome().ifFound().orElseThrow());
  }

  private static Pupils.AfferentDefect mirrored(Pupils.AfferentDefect defect) {
    DefectSide side =
        switch (defect.side()) {
          case RIGHT -> DefectSide.LEFT;
          case LEFT -> DefectSide.RIGHT;
          default -> defect.side();
        };
    return new Pupils.AfferentDefect(side, defect.grade(), defect.logUnits());
  }

  private static PupilEquality mirrored(PupilEquality equality) {
    return switch (equality) {
      case RIGHT_LARGER -> PupilEquality.LEFT_LARGER;
      case LEFT_LARGER -> PupilEquality.RIGHT_LARGER;
      default -> equality;
    };
  }

  private static Movements.Ductions mirrored(Movements.Ductions moves) {
    Map<GazeDirection, Outcome<Integer>> grades = new EnumMap<>(GazeDirection.class);
    moves.grades().forEach((gaze, grade) -> grades.put(mirrored(gaze), grade));
    return new Movements.Ductions(grades);
  }

  private static GazeDirection mirrored(GazeDirection gaze) {
    String name = gaze.name();
    return GazeDirection.valueOf(
        name.contains("RIGHT") ? name.replace("RIGHT", "LEFT") : name.replace("LEFT", "RIGHT"));
  }

  @Test
  void seesThatAMirrorChangesWhatItIsGiven() {
    assertNotEquals("right larger", swapped("right larger"));
    assertEquals("left eye in bright light", swapped("right eye in bright light"));
  }
}
