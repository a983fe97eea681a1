package org.isopter.model.clinical.field;

import java.util.List;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Fields.Confrontation;
import org.isopter.model.clinical.field.FieldEvidence.Afferent;
import org.isopter.model.clinical.field.PathwayPlace.Side;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Fit;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;

/** From the fields of both eyes to their pattern, and to the places of the table that fit it. */
public final class FieldPlaces {

  /**
   * What is read from two fields.
   *
   * @param pattern the pattern of the losses
   * @param places the places on the pathway that fit; it is no diagnosis and no advice
   */
  public record Reading(FieldPattern pattern, Fit<PathwayPlace> places) {}

  private FieldPlaces() {}

  /** Returns what is read from two fields. */
  public static Reading of(FieldSigns signs) {
    SidedPattern sided = SidedPattern.of(signs);
    FieldEvidence evidence = FieldEvidence.of(signs, sided.side());
    List<PathwayPlace> places = places(sided, evidence);
    StatementBuilder topic =
        new StatementBuilder("field.places", sided.pattern().source(), signs.facts());
    return new Reading(
        sided.pattern(),
        Fit.of(
            places,
            (certainty, fitting) ->
                topic.say(certainty, words(sided, fitting) + butForDefect(signs, sided, fitting))));
  }

  /** Where nothing fits beside an afferent defect, a second lesion may have made that. */
  private static String butForDefect(
      FieldSigns signs, SidedPattern sided, List<PathwayPlace> places) {
    FieldSigns alone = signs.with(signs.details().withoutAfferent());
    List<PathwayPlace> others = places(sided, FieldEvidence.of(alone, sided.side()));
    return places.isEmpty() && !others.isEmpty()
        ? " All but the afferent defect fits: "
            + listed(others)
            + ". There may be more than one cause."
        : "";
  }

  /**
   * Returns what is read from two confrontation tests; withheld when a quadrant was not tested.
   *
   * @param right the right eye's test
   * @param left the left eye's test
   * @param details what is known beside them
   */
  public static Answer<Reading> of(Confrontation right, Confrontation left, FieldDetails details) {
    return FieldSigns.of(right, left)
        .map(signs -> of(signs.with(details)))
        .<Answer<Reading>>map(reading -> new Answer.Given<>(reading, reading.places().statement()))
        .orElseGet(
            () ->
                StatementBuilder.of(
                        "field.places", Citation.COMMON_PRACTICE, "a quadrant was not tested")
                    .withheld("No pattern is read: not every quadrant of both eyes was tested."));
  }

  private static List<PathwayPlace> places(SidedPattern sided, FieldEvidence evidence) {
    Side same = sided.side();
    return switch (sided.pattern()) {
      case NO_REGION_REDUCED, OTHER -> List.of();
      case ONE_EYE, ONE_EYE_CENTRAL, ONE_EYE_ALTITUDINAL -> at(same, eye(evidence));
      case ONE_EYE_ALL -> at(same, wholeEye(evidence));
      case ONE_EYE_TEMPORAL -> temporalHalf(same, evidence);
      case JUNCTIONAL -> junction(sided, evidence);
      case BITEMPORAL -> bitemporal(evidence, Pathway.CHIASM);
      case BITEMPORAL_LOWER -> bitemporal(evidence, Pathway.CHIASM_FROM_ABOVE);
      case BITEMPORAL_UPPER -> bitemporal(evidence, Pathway.CHIASM_FROM_BELOW);
      case BINASAL -> at(Side.BILATERAL, binasal(evidence));
      case BOTH_EYES_ALL -> at(Side.BILATERAL, whole(evidence));
      case BOTH_EYES_CENTRAL, BOTH_EYES_ALTITUDINAL ->
          at(Side.BILATERAL, bothEyes(Pathway.OCCIPITAL_CORTEX));
      case HOMONYMOUS_HALF -> at(same.mirrored(), HalfFieldPlaces.half(evidence));
      case HOMONYMOUS_UPPER -> at(same.mirrored(), HalfFieldPlaces.upper(evidence));
      case HOMONYMOUS_LOWER -> at(same.mirrored(), HalfFieldPlaces.lower(evidence));
      case HOMONYMOUS_SECTOR -> at(same.mirrored(), HalfFieldPlaces.sector(evidence));
    };
  }

  private static List<PathwayPlace> at(Side side, List<Pathway> parts) {
    return parts.stream().map(part -> new PathwayPlace(part, side)).toList();
  }

  /** That no afferent defect is found excludes neither: the block is a degree, and relative. */
  private static List<Pathway> eye(FieldEvidence evidence) {
    return evidence.afferent() == Afferent.OTHER_SIDE
        ? List.of()
        : List.of(Pathway.RETINA, Pathway.OPTIC_NERVE);
  }

  /** What clouds the whole of an eye leaves the pupils alike; common practice, no source. */
  private static List<Pathway> wholeEye(FieldEvidence evidence) {
    boolean clouded = evidence.afferentIs(Afferent.NONE, Afferent.NONE) && evidence.mayBeClouded();
    return clouded
        ? Stream.concat(eye(evidence).stream(), Stream.of(Pathway.MEDIA)).toList()
        : eye(evidence);
  }

  private static List<Pathway> whole(FieldEvidence evidence) {
    return evidence.mayBeClouded()
        ? bothEyes(Pathway.OCCIPITAL_CORTEX, Pathway.MEDIA, Pathway.NOT_ORGANIC)
        : bothEyes(Pathway.OCCIPITAL_CORTEX, Pathway.NOT_ORGANIC);
  }

  private static List<PathwayPlace> temporalHalf(Side same, FieldEvidence evidence) {
    if (evidence.afferent() == Afferent.OTHER_SIDE) {
      return List.of();
    }
    List<Pathway> artefact =
        evidence.afferentIs(Afferent.NONE, Afferent.NONE)
            ? List.of(Pathway.NOT_ORGANIC)
            : List.of();
    return Stream.of(
            at(same, List.of(Pathway.OPTIC_NERVE_NEAR_CHIASM)),
            at(Side.MIDLINE, chiasm(evidence, Pathway.CHIASM)),
            at(same, List.of(Pathway.RETINA)),
            at(same, artefact))
        .flatMap(List::stream)
        .toList();
  }

  /**
   * A half that is lost in both eyes with one centre may be the half and something beside it, and
   * each eye may have a disease of its own.
   */
  private static List<PathwayPlace> junction(SidedPattern sided, FieldEvidence evidence) {
    List<Pathway> junction =
        evidence.afferentIs(Afferent.SAME_SIDE, Afferent.SAME_SIDE)
            ? List.of(Pathway.JUNCTION)
            : List.of();
    List<Pathway> behind =
        sided.half() && evidence.mayRespectVertical() ? List.of(Pathway.RETROCHIASMAL) : List.of();
    return Stream.of(
            at(sided.side(), junction),
            at(Side.MIDLINE, crossing(evidence)),
            at(sided.side(), behind),
            at(Side.BILATERAL, eyes(evidence)))
        .flatMap(List::stream)
        .toList();
  }

  /** A centre that is lost beside temporal halves does not take them from the chiasm. */
  private static List<Pathway> crossing(FieldEvidence evidence) {
    return evidence.temporalInBoth() ? chiasm(evidence, Pathway.CHIASM) : List.of();
  }

  private static List<Pathway> chiasm(FieldEvidence evidence, Pathway part) {
    return evidence.mayRespectVertical() ? List.of(part) : List.of();
  }

  /** Tilted discs may seem to respect the vertical meridian; losses of the retina do not. */
  private static List<PathwayPlace> bitemporal(FieldEvidence evidence, Pathway part) {
    return Stream.concat(
            at(Side.MIDLINE, chiasm(evidence, part)).stream(),
            at(Side.BILATERAL, eyes(evidence)).stream())
        .toList();
  }

  private static List<Pathway> eyes(FieldEvidence evidence) {
    return evidence.mayCrossVertical()
        ? List.of(Pathway.RETINA, Pathway.OPTIC_NERVE)
        : List.of(Pathway.OPTIC_NERVE);
  }

  private static List<Pathway> binasal(FieldEvidence evidence) {
    return evidence.mayRespectVertical() ? bothEyes(Pathway.CHIASM_FROM_THE_SIDES) : bothEyes();
  }

  private static List<Pathway> bothEyes(Pathway... more) {
    return Stream.concat(Stream.of(Pathway.RETINA, Pathway.OPTIC_NERVE), Stream.of(more)).toList();
  }

  private static String words(SidedPattern sided, List<PathwayPlace> places) {
    String fits =
        places.isEmpty()
            ? noPlace(sided.pattern())
            : " What fits in the table: " + listed(places) + ".";
    return sided.pattern().words() + fits;
  }

  private static String listed(List<PathwayPlace> places) {
    return String.join("; ", places.stream().map(PathwayPlace::toString).toList());
  }

  private static String noPlace(FieldPattern pattern) {
    boolean said = pattern == FieldPattern.NO_REGION_REDUCED || pattern == FieldPattern.OTHER;
    return said ? "" : " No single place of the table fits all of it.";
  }
}
