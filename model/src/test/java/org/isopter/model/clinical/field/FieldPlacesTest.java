package org.isopter.model.clinical.field;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.FieldRegion;
import org.isopter.model.answer.sight.FieldResponse;
import org.isopter.model.catalogue.Fields.Confrontation;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Outcome;
import org.junit.jupiter.api.Test;

class FieldPlacesTest {

  private static final long ONE_SECOND = 1_000_000_000L;

  @Test
  void readsAllMapsInUnderASecond() {
    List<FieldSigns> all = FieldMaps.all();
    all.forEach(FieldPlaces::of);
    // Time of the processor, not of the clock: other work on the machine does not count.
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    long start = threads.getCurrentThreadCpuTime();
    long read = all.stream().map(FieldPlaces::of).filter(one -> one.places() != null).count();
    long took = threads.getCurrentThreadCpuTime() - start;
    assertEquals(6561, read);
    assertTrue(took < ONE_SECOND, took / 1_000_000 + " ms");
  }

  /** The numbers follow from counting: three answers a quadrant, two of which are a loss. */
  @Test
  void sortsAllMapsIntoPatterns() {
    Map<FieldPattern, Long> counts = new EnumMap<>(FieldPattern.class);
    FieldMaps.all().forEach(signs -> counts.merge(FieldPlaces.of(signs).pattern(), 1L, Long::sum));
    assertEquals(1, counts.get(FieldPattern.NO_REGION_REDUCED));
    assertEquals(2 * 16, counts.get(FieldPattern.ONE_EYE_ALL));
    assertEquals(2 * 4, counts.get(FieldPattern.ONE_EYE_TEMPORAL));
    assertEquals(2 * 8, counts.get(FieldPattern.ONE_EYE_ALTITUDINAL));
    assertEquals(2 * (80 - 16 - 4 - 8), counts.get(FieldPattern.ONE_EYE));
    assertEquals(2 * 16 * 8, counts.get(FieldPattern.JUNCTIONAL));
    assertEquals(16 * 16, counts.get(FieldPattern.BOTH_EYES_ALL));
    assertEquals(8 * 8, counts.get(FieldPattern.BINASAL));
    assertEquals(4, counts.get(FieldPattern.BITEMPORAL_UPPER));
    assertEquals(4, counts.get(FieldPattern.BITEMPORAL_LOWER));
    assertEquals(8 * 8 - 8, counts.get(FieldPattern.BITEMPORAL));
    assertEquals(2 * 4, counts.get(FieldPattern.HOMONYMOUS_UPPER));
    assertEquals(2 * 4, counts.get(FieldPattern.HOMONYMOUS_LOWER));
    // Of the 64 of a side 8 are quadrants, and 8 share no quadrant between the eyes.
    assertEquals(2 * (64 - 8 - 8), counts.get(FieldPattern.HOMONYMOUS_HALF));
    assertEquals(6561, counts.values().stream().mapToLong(Long::longValue).sum());
  }

  @Test
  void mirrorsItsAnswerWithTheEyes() {
    for (FieldSigns signs : FieldMaps.allWithCentres()) {
      FieldPlaces.Reading reading = FieldPlaces.of(signs);
      FieldPlaces.Reading mirrored = FieldPlaces.of(signs.mirrored());
      assertEquals(reading.pattern(), mirrored.pattern(), signs.toString());
      assertEquals(mirror(reading), Set.copyOf(mirrored.places().all()), signs.toString());
    }
  }

  @Test
  void mirrorsItsAnswerWithTheDetailsToo() {
    List<FieldDetails> details = FieldMaps.details();
    for (FieldSigns signs : everyPattern()) {
      for (FieldDetails known : details) {
        FieldSigns with = signs.with(known);
        assertEquals(
            mirror(FieldPlaces.of(with)),
            Set.copyOf(FieldPlaces.of(with.mirrored()).places().all()),
            with.toString());
      }
    }
  }

  private static Set<PathwayPlace> mirror(FieldPlaces.Reading reading) {
    return reading.places().all().stream().map(PathwayPlace::mirrored).collect(Collectors.toSet());
  }

  /** Monotony: whatever more is known, each place lies within one that was said before. */
  @Test
  void saysNothingNewWhenMoreIsKnown() {
    List<FieldDetails> details = FieldMaps.details();
    for (FieldSigns signs : everyPattern()) {
      for (FieldDetails known : details) {
        List<PathwayPlace> places = FieldPlaces.of(signs.with(known)).places().all();
        for (FieldDetails less : FieldMaps.withOneForgotten(known)) {
          List<PathwayPlace> before = FieldPlaces.of(signs.with(less)).places().all();
          assertTrue(
              places.stream().allMatch(place -> before.stream().anyMatch(place::isWithin)),
              () -> signs.with(known) + ": " + places + ", before " + before);
        }
      }
    }
  }

  /** Fields of every pattern: for each its first maps. */
  private static List<FieldSigns> everyPattern() {
    Map<FieldPattern, List<FieldSigns>> byPattern =
        FieldMaps.allWithCentres().stream()
            .collect(Collectors.groupingBy(signs -> FieldPlaces.of(signs).pattern()));
    List<FieldSigns> chosen =
        byPattern.values().stream().flatMap(maps -> maps.stream().limit(8)).toList();
    List<FieldSigns> sectors =
        byPattern.get(FieldPattern.HOMONYMOUS_HALF).stream()
            .limit(4)
            .map(FieldSigns::asSector)
            .toList();
    return Stream.concat(chosen.stream(), sectors.stream()).toList();
  }

  @Test
  void takesAPartOfOneEyeAloneForIncongruityAndNotItsDepth() {
    FieldResponse full = FieldResponse.FULL;
    FieldResponse absent = FieldResponse.ABSENT;
    EyeField right = new EyeField(full, absent, full, absent, Optional.empty());
    assertEquals(
        Set.of(Pathway.RETROCHIASMAL), parts(right, eyeLosingUpperTemporal(FieldResponse.REDUCED)));
    assertEquals(
        Set.of(
            Pathway.OPTIC_TRACT,
            Pathway.LATERAL_GENICULATE,
            Pathway.ANTERIOR_RADIATION,
            Pathway.OCCIPITAL_CORTEX),
        parts(right, eyeLosingUpperTemporal(full)));
  }

  private static EyeField eyeLosingUpperTemporal(FieldResponse lower) {
    return new EyeField(
        FieldResponse.ABSENT, FieldResponse.FULL, lower, FieldResponse.FULL, Optional.empty());
  }

  private static Set<Pathway> parts(EyeField right, EyeField left) {
    return FieldPlaces.of(FieldSigns.of(right, left)).places().all().stream()
        .map(PathwayPlace::part)
        .collect(Collectors.toSet());
  }

  @Test
  void keepsOneEyedLossOutOfTheBrain() {
    for (EyeField eye : FieldMaps.eyes(Optional.empty())) {
      EyeField full = FieldMaps.eyes(Optional.empty()).get(0);
      assertTrue(
          FieldPlaces.of(FieldSigns.of(eye, full)).places().all().stream()
              .noneMatch(place -> place.part().isWithin(Pathway.RETROCHIASMAL)));
    }
  }

  @Test
  void readsConfrontationTestsWithAllQuadrants() {
    Map<FieldRegion, Outcome<FieldResponse>> regions = new EnumMap<>(FieldRegion.class);
    for (FieldRegion region : FieldRegion.values()) {
      regions.put(region, Outcome.found(FieldResponse.FULL));
    }
    Confrontation full = confrontation(regions);
    assertTrue(FieldPlaces.of(full, full, FieldDetails.none()).isGiven());
    regions.put(FieldRegion.CENTRAL, Outcome.absent(Absence.NOT_DONE));
    assertTrue(FieldPlaces.of(confrontation(regions), full, FieldDetails.none()).isGiven());
    regions.put(FieldRegion.INFERONASAL, Outcome.absent(Absence.UNABLE));
    assertFalse(FieldPlaces.of(full, confrontation(regions), FieldDetails.none()).isGiven());
  }

  private static Confrontation confrontation(Map<FieldRegion, Outcome<FieldResponse>> regions) {
    return new Confrontation(regions, Optional.empty(), Optional.empty());
  }
}
