package org.isopter.model.clinical.field;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.isopter.model.clinical.field.FieldEvidence.Afferent;

/**
 * The parts of the pathway behind the chiasm that a homonymous loss fits.
 *
 * <p>A half that is lost names no lobe by itself: without a sign that tells more, all that is said
 * is that it lies behind the chiasm.
 */
final class HalfFieldPlaces {

  /** What a loss that differs between the eyes points to first. */
  private static final Set<Pathway> INCONGRUOUS =
      EnumSet.of(Pathway.OPTIC_TRACT, Pathway.LATERAL_GENICULATE, Pathway.ANTERIOR_RADIATION);

  private HalfFieldPlaces() {}

  static List<Pathway> half(FieldEvidence evidence) {
    if (evidence.afferent() == Afferent.OTHER_SIDE || !evidence.mayRespectVertical()) {
      return List.of();
    }
    Set<Pathway> places = named(evidence);
    if (places.isEmpty()) {
      return List.of(Pathway.RETROCHIASMAL);
    }
    places.removeIf(place -> !allows(place, evidence));
    return List.copyOf(places);
  }

  static List<Pathway> upper(FieldEvidence evidence) {
    return quadrant(evidence, Pathway.TEMPORAL_RADIATION, Pathway.LOWER_CALCARINE_BANK);
  }

  static List<Pathway> lower(FieldEvidence evidence) {
    return quadrant(evidence, Pathway.PARIETAL_RADIATION, Pathway.UPPER_CALCARINE_BANK);
  }

  static List<Pathway> sector(FieldEvidence evidence) {
    boolean fits = behindTract(evidence) && evidence.mayBeSplit();
    return fits ? List.of(Pathway.LATERAL_GENICULATE) : List.of();
  }

  /** Returns the places that a sign points to; empty when no sign points anywhere. */
  private static Set<Pathway> named(FieldEvidence evidence) {
    EnumSet<Pathway> places = EnumSet.noneOf(Pathway.class);
    if (evidence.isIncongruous() || evidence.looksIncongruous()) {
      places.addAll(INCONGRUOUS);
      // Of 175 incongruous losses one in five was of the occipital lobe: Kedar 2007.
      places.add(Pathway.OCCIPITAL_CORTEX);
    }
    if (evidence.afferent() == Afferent.SAME_SIDE) {
      places.add(Pathway.OPTIC_TRACT);
    }
    if (evidence.isCrescentSpared()) {
      places.add(Pathway.OCCIPITAL_CORTEX_BEHIND);
    } else if (evidence.isSpared()) {
      places.add(Pathway.OCCIPITAL_CORTEX);
    }
    return places;
  }

  private static boolean allows(Pathway place, FieldEvidence evidence) {
    return switch (place) {
      case OPTIC_TRACT ->
          evidence.afferentIs(Afferent.SAME_SIDE, Afferent.SAME_SIDE) && mayBeInFront(evidence);
      case LATERAL_GENICULATE, ANTERIOR_RADIATION ->
          evidence.afferentIs(Afferent.NONE, Afferent.NONE) && mayBeInFront(evidence);
      default -> evidence.afferentIs(Afferent.NONE, Afferent.NONE);
    };
  }

  /** Congruity excludes no place: half of the losses of the tract were congruous, Kedar 2007. */
  private static boolean mayBeInFront(FieldEvidence evidence) {
    return evidence.mayBeSplit() && !evidence.isCrescentSpared();
  }

  private static List<Pathway> quadrant(FieldEvidence evidence, Pathway radiation, Pathway bank) {
    EnumSet<Pathway> places = EnumSet.noneOf(Pathway.class);
    if (behindTract(evidence) && evidence.mayBeSplit()) {
      places.add(radiation);
    }
    if (behindTract(evidence) && evidence.mayBeSpared()) {
      places.add(bank);
    }
    return List.copyOf(places);
  }

  private static boolean behindTract(FieldEvidence evidence) {
    return evidence.afferentIs(Afferent.NONE, Afferent.NONE) && evidence.mayRespectVertical();
  }
}
