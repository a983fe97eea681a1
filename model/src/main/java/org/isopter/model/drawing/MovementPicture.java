package org.isopter.model.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.answer.movement.GazeDirection;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;

/**
 * How far each eye moves into the nine directions of gaze, as numbers where the eye would look; a
 * square is darker the less the eye moves there, and has a broken edge where it moves too far.
 */
final class MovementPicture {

  private static final double SIDE = 40;
  private static final double STEP = 46;
  private static final double MIDDLE = 115;

  private final Sayings sayings;
  private final SeenBy view;
  private final Svg svg = new Svg();

  private MovementPicture(Exam exam, SeenBy view) {
    sayings = new Sayings(exam.view());
    this.view = view;
  }

  static Picture of(Exam exam, SeenBy view) {
    return new MovementPicture(exam, view.orUsually(SeenBy.EXAMINER)).drawn();
  }

  private Picture drawn() {
    List<String> right = eye(Site.RIGHT);
    List<String> left = eye(Site.LEFT);
    double end =
        Math.max(
            svg.lines(view.x(Site.RIGHT), 205, right), svg.lines(view.x(Site.LEFT), 205, left));
    List<String> both = new ArrayList<>(sayings.of("Double vision", Movements.DIPLOPIA, Site.BOTH));
    both.addAll(sayings.of("Nystagmus of both eyes", Movements.NYSTAGMUS, Site.BOTH));
    return svg.picture("isopter-movements", "Eye movements" + view.words(), right, left, both, end);
  }

  private List<String> eye(Site eye) {
    double x = view.x(eye);
    svg.title(x, eye);
    svg.words(x, 34, "up");
    svg.words(x + view.right() * (1.5 * STEP + 20), MIDDLE + 4, "right");
    svg.words(x - view.right() * (1.5 * STEP + 20), MIDDLE + 4, "left");
    Map<GazeDirection, Outcome<Integer>> grades =
        sayings.only(Movements.DUCTIONS, eye).map(Movements.Ductions::grades).orElse(Map.of());
    for (GazeDirection gaze : GazeDirection.values()) {
      square(
          x + view.right() * across(gaze) * STEP,
          MIDDLE + down(gaze) * STEP,
          Optional.ofNullable(grades.get(gaze)).flatMap(Outcome::ifFound),
          sayings.unknown(eye));
    }
    List<String> said = new ArrayList<>(sayings.globe(eye));
    said.addAll(sayings.ofDrawn("Movements", Movements.DUCTIONS, eye));
    said.addAll(sayings.of("Nystagmus", Movements.NYSTAGMUS, eye));
    said.addAll(sayings.of("Pain on movement", Movements.PAIN, eye));
    return said;
  }

  private void square(double x, double y, Optional<Integer> grade, String unknown) {
    svg.path(
        "M%s %s h%s v%s h-%s z"
            .formatted(
                Svg.number(x - SIDE / 2),
                Svg.number(y - SIDE / 2),
                Svg.number(SIDE),
                Svg.number(SIDE),
                Svg.number(SIDE)),
        grade.map(MovementPicture::look).orElse(Svg.DOTTED));
    svg.words(x, y + 4, grade.map(MovementPicture::word).orElse(unknown));
  }

  private static String look(int grade) {
    if (grade == 0) {
      return Svg.LINE;
    }
    return grade > 0
        ? Svg.LINE + " stroke-dasharray=\"7 3\""
        : "fill=\"currentColor\" fill-opacity=\"%s\" stroke=\"currentColor\" stroke-width=\"1.5\""
            .formatted(Svg.number(-0.1 * grade));
  }

  private static String word(int grade) {
    if (grade == 0) {
      return "full";
    }
    return grade > 0 ? "+" + grade : "\u2212" + -grade;
  }

  /** Returns 1 for a direction to the person's right, -1 to the left. */
  private static int across(GazeDirection gaze) {
    return switch (gaze) {
      case UP_RIGHT, RIGHT, DOWN_RIGHT -> 1;
      case UP, PRIMARY, DOWN -> 0;
      case UP_LEFT, LEFT, DOWN_LEFT -> -1;
    };
  }

  private static int down(GazeDirection gaze) {
    return switch (gaze) {
      case UP_RIGHT, UP, UP_LEFT -> -1;
      case RIGHT, PRIMARY, LEFT -> 0;
      case DOWN_RIGHT, DOWN, DOWN_LEFT -> 1;
    };
  }
}
