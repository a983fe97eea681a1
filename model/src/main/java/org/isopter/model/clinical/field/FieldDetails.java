package org.isopter.model.clinical.field;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.DefectSide;

/**
 * What is known beside the quadrants; each as far as it was examined.
 *
 * @param afferent the eye with the relative afferent defect, or none
 * @param congruous whether the losses of the two eyes match, as the examiner judged
 * @param macularSparing whether the centre of the lost half is spared
 * @param crescentSpared whether the temporal crescent of the lost half is spared
 * @param vertical whether the loss respects the vertical meridian
 */
public record FieldDetails(
    Optional<DefectSide> afferent,
    Optional<Boolean> congruous,
    Optional<Boolean> macularSparing,
    Optional<Boolean> crescentSpared,
    Optional<Boolean> vertical) {

  /** Returns details of which none was examined. */
  public static FieldDetails none() {
    return new FieldDetails(
        Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  /** Returns these details with an afferent defect. */
  public FieldDetails afferent(DefectSide side) {
    return new FieldDetails(Optional.of(side), congruous, macularSparing, crescentSpared, vertical);
  }

  /** Returns these details as if no afferent defect had been looked for. */
  FieldDetails withoutAfferent() {
    return new FieldDetails(Optional.empty(), congruous, macularSparing, crescentSpared, vertical);
  }

  /** Returns these details with the examiner's word on congruity. */
  public FieldDetails congruous(boolean match) {
    return new FieldDetails(afferent, Optional.of(match), macularSparing, crescentSpared, vertical);
  }

  /** Returns these details with macular sparing stated. */
  public FieldDetails macularSparing(boolean spared) {
    return new FieldDetails(afferent, congruous, Optional.of(spared), crescentSpared, vertical);
  }

  /** Returns these details with sparing of the temporal crescent stated. */
  public FieldDetails crescentSpared(boolean spared) {
    return new FieldDetails(afferent, congruous, macularSparing, Optional.of(spared), vertical);
  }

  /** Returns these details with the vertical meridian stated. */
  public FieldDetails vertical(boolean respected) {
    return new FieldDetails(
        afferent, congruous, macularSparing, crescentSpared, Optional.of(respected));
  }

  /** Returns these details seen in a mirror. */
  public FieldDetails mirrored() {
    return new FieldDetails(
        afferent.map(FieldDetails::mirrored), congruous, macularSparing, crescentSpared, vertical);
  }

  private static DefectSide mirrored(DefectSide side) {
    return switch (side) {
      case NONE -> DefectSide.NONE;
      case RIGHT -> DefectSide.LEFT;
      case LEFT -> DefectSide.RIGHT;
      case EQUIVOCAL -> DefectSide.EQUIVOCAL;
    };
  }

  List<String> facts() {
    return Stream.of(
            afferent.map(side -> "relative afferent defect " + side.word()),
            congruous.map(match -> match ? "congruous" : "incongruous"),
            macularSparing.map(spared -> "macular sparing " + yes(spared)),
            crescentSpared.map(spared -> "temporal crescent spared " + yes(spared)),
            vertical.map(respected -> "vertical meridian respected " + yes(respected)))
        .flatMap(Optional::stream)
        .toList();
  }

  private static String yes(boolean fact) {
    return fact ? "yes" : "no";
  }
}
