package org.isopter.model.text;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.isopter.model.answer.movement.GazeDirection;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.value.Absence;

/**
 * Movements of an eye in words: what is limited or too much first, each with its grade, then what
 * is full, then what was not tested.
 */
final class MovementText {

  private final List<String> limited = new ArrayList<>();
  private final List<String> over = new ArrayList<>();
  private final List<String> full = new ArrayList<>();
  private final Map<Absence, List<String>> untested = new EnumMap<>(Absence.class);

  private MovementText(Movements.Ductions moves) {
    moves
        .grades()
        .forEach(
            (gaze, outcome) ->
                outcome.fold(
                    grade -> list(grade).add(gaze(gaze) + grade(grade)),
                    reason ->
                        untested
                            .computeIfAbsent(reason, any -> new ArrayList<>())
                            .add(gaze(gaze))));
  }

  static String of(Movements.Ductions moves) {
    return new MovementText(moves).words();
  }

  private String words() {
    boolean graded = !limited.isEmpty() || !over.isEmpty();
    if (!graded && untested.isEmpty()) {
      return "full in all " + full.size() + " directions tested";
    }
    List<String> words = new ArrayList<>();
    add(words, "limited ", limited);
    add(words, "overaction ", over);
    if (full.size() >= 4) {
      words.add("full in the " + full.size() + (graded ? " other" : "") + " directions tested");
    } else if (!full.isEmpty()) {
      words.add("full " + looking(full));
    }
    untested.forEach((why, gazes) -> words.add(PlainWords.untested(why) + " " + looking(gazes)));
    return String.join(", ", words);
  }

  private List<String> list(int grade) {
    return grade == 0 ? full : grade < 0 ? limited : over;
  }

  private static void add(List<String> words, String what, List<String> gazes) {
    if (!gazes.isEmpty()) {
      words.add(what + looking(gazes));
    }
  }

  private static String grade(int grade) {
    return grade == 0 ? "" : " (grade " + (grade > 0 ? "+" : "") + grade + ")";
  }

  private static String looking(List<String> gazes) {
    return "on looking " + PlainWords.list(gazes);
  }

  /** An oblique direction is one word, so that a list of directions cannot be read as two. */
  private static String gaze(GazeDirection gaze) {
    return gaze == GazeDirection.PRIMARY ? "straight ahead" : gaze.word().replace("-", "-and-");
  }
}
