package org.isopter.model.clinical.pupil;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.pupil.PupilResponse;
import org.isopter.model.value.Concept;

/**
 * The signs of both pupils, each as far as it was examined.
 *
 * @param right the signs of the right pupil
 * @param left the signs of the left pupil
 * @param inequality the inequality of the pupils in light and dark
 * @param afferent the eye with the relative afferent defect, or none
 */
public record PupilSigns(
    Pupil right, Pupil left, Optional<PupilInequality> inequality, Optional<DefectSide> afferent) {

  /**
   * How one pupil, the one watched, answers.
   *
   * @param direct to light in its own eye
   * @param consensual to light in the fellow eye
   * @param near to a near target
   */
  public record Pupil(
      Optional<PupilResponse> direct,
      Optional<PupilResponse> consensual,
      Optional<PupilResponse> near) {

    /** Returns a pupil of which nothing was examined. */
    public static Pupil unexamined() {
      return new Pupil(Optional.empty(), Optional.empty(), Optional.empty());
    }

    private Stream<String> facts(String eye) {
      return Stream.of(
              fact(eye + " direct response", direct),
              fact(eye + " consensual response", consensual),
              fact(eye + " near response", near))
          .flatMap(Optional::stream);
    }
  }

  /** Returns the signs seen in a mirror: right and left changed over. */
  public PupilSigns mirrored() {
    return new PupilSigns(
        /* right= */ left,
        /* left= */ right,
        inequality.map(PupilInequality::mirrored),
        afferent.map(PupilSigns::mirrored));
  }

  public static DefectSide mirrored(DefectSide side) {
    return switch (side) {
      case NONE -> DefectSide.NONE;
      case RIGHT -> DefectSide.LEFT;
      case LEFT -> DefectSide.RIGHT;
    };
  }

  List<String> facts() {
    Stream<String> pair =
        Stream.of(
                inequality.map(found -> "inequality " + Concept.word(found)),
                afferent.map(found -> "relative afferent defect " + found.word()))
            .flatMap(Optional::stream);
    List<String> facts =
        Stream.of(right.facts("right"), left.facts("left"), pair).flatMap(all -> all).toList();
    return facts.isEmpty() ? List.of("no sign of the pupils examined") : facts;
  }

  private static Optional<String> fact(String what, Optional<PupilResponse> response) {
    return response.map(found -> what + " " + found.word());
  }
}
