package org.isopter.model.clinical.field;

import java.util.Map;
import java.util.Optional;
import org.isopter.model.answer.sight.FieldRegion;
import org.isopter.model.answer.sight.FieldResponse;
import org.isopter.model.catalogue.Fields.Confrontation;
import org.isopter.model.value.Outcome;

/**
 * What the four quadrants and the centre of one eye's field gave.
 *
 * @param superotemporal the upper temporal quadrant
 * @param superonasal the upper nasal quadrant
 * @param inferotemporal the lower temporal quadrant
 * @param inferonasal the lower nasal quadrant
 * @param central the centre; empty when it was not tested, and then nothing is concluded from it
 */
public record EyeField(
    FieldResponse superotemporal,
    FieldResponse superonasal,
    FieldResponse inferotemporal,
    FieldResponse inferonasal,
    Optional<FieldResponse> central) {

  static final int UPPER_TEMPORAL = 1;
  static final int UPPER_NASAL = 2;
  static final int LOWER_TEMPORAL = 4;
  static final int LOWER_NASAL = 8;
  static final int TEMPORAL = UPPER_TEMPORAL | LOWER_TEMPORAL;
  static final int NASAL = UPPER_NASAL | LOWER_NASAL;
  static final int UPPER = UPPER_TEMPORAL | UPPER_NASAL;
  static final int LOWER = LOWER_TEMPORAL | LOWER_NASAL;
  static final int ALL = UPPER | LOWER;

  /** Returns the field of a confrontation test, or nothing when a quadrant was not tested. */
  public static Optional<EyeField> of(Confrontation tested) {
    Map<FieldRegion, Outcome<FieldResponse>> regions = tested.regions();
    return found(regions, FieldRegion.SUPEROTEMPORAL)
        .flatMap(
            upperTemporal ->
                found(regions, FieldRegion.SUPERONASAL)
                    .flatMap(upperNasal -> lower(regions, upperTemporal, upperNasal)));
  }

  private static Optional<EyeField> lower(
      Map<FieldRegion, Outcome<FieldResponse>> regions,
      FieldResponse upperTemporal,
      FieldResponse upperNasal) {
    Optional<FieldResponse> central = found(regions, FieldRegion.CENTRAL);
    return found(regions, FieldRegion.INFEROTEMPORAL)
        .flatMap(
            lowerTemporal ->
                found(regions, FieldRegion.INFERONASAL)
                    .map(
                        lowerNasal ->
                            new EyeField(
                                upperTemporal, upperNasal, lowerTemporal, lowerNasal, central)));
  }

  private static Optional<FieldResponse> found(
      Map<FieldRegion, Outcome<FieldResponse>> regions, FieldRegion region) {
    return Optional.ofNullable(regions.get(region)).flatMap(Outcome::ifFound);
  }

  /** Returns the quadrants that are not full, as bits. */
  int lost() {
    return bit(superotemporal, UPPER_TEMPORAL)
        | bit(superonasal, UPPER_NASAL)
        | bit(inferotemporal, LOWER_TEMPORAL)
        | bit(inferonasal, LOWER_NASAL);
  }

  private static int bit(FieldResponse response, int quadrant) {
    return response == FieldResponse.FULL ? 0 : quadrant;
  }

  /** Says whether the centre was tested and is not full. */
  boolean isCentreLost() {
    return central.filter(response -> response != FieldResponse.FULL).isPresent();
  }

  /** Says whether nothing that was tested is reduced. */
  boolean isUntouched() {
    return lost() == 0 && !isCentreLost();
  }

  String facts(String eye) {
    // Plain joining: this runs for every map of both eyes, and formatting would take most of it.
    return eye
        + " eye: superotemporal "
        + superotemporal.word()
        + ", superonasal "
        + superonasal.word()
        + ", inferotemporal "
        + inferotemporal.word()
        + ", inferonasal "
        + inferonasal.word()
        + ", centre "
        + central.map(FieldResponse::word).orElse("not tested");
  }
}
