package org.isopter.model.note.item;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.model.answer.movement.GazeDirection;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.Matcher;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.value.Site;

/** The words for directions of gaze; a bare right or left would be a side. */
final class Gazes {

  /** A direction that may depend on the eye, as abduction does. */
  record Toward(Function<Site, GazeDirection> direction) {
    GazeDirection of(Site eye) {
      return direction.apply(eye);
    }
  }

  /** The directions in which an eye moves: all but straight ahead. */
  static final List<GazeDirection> MOVES =
      Arrays.stream(GazeDirection.values()).filter(gaze -> gaze != GazeDirection.PRIMARY).toList();

  private static final PhraseTable<GazeDirection> GAZES =
      PhraseTable.<GazeDirection>empty()
          .say(GazeDirection.UP_RIGHT, "up right gaze", "up and right", "right and up")
          .say(GazeDirection.UP, "up gaze", "upgaze", "up", "elevation", "superior", "superiorly")
          .say(GazeDirection.UP_LEFT, "up left gaze", "up and left", "left and up")
          .say(GazeDirection.RIGHT, "right gaze", "gaze right", "R gaze")
          .say(GazeDirection.PRIMARY, "primary gaze", "primary", "straight ahead")
          .say(GazeDirection.LEFT, "left gaze", "gaze left", "L gaze")
          .say(GazeDirection.DOWN_RIGHT, "down right gaze", "down and right", "right and down")
          .say(
              GazeDirection.DOWN,
              "down gaze",
              "downgaze",
              "down",
              "depression",
              "inferior",
              "inferiorly")
          .say(GazeDirection.DOWN_LEFT, "down left gaze", "down and left", "left and down");

  private static final PhraseTable<GazeDirection> PLAIN =
      PhraseTable.<GazeDirection>empty()
          .say(GazeDirection.RIGHT, "right")
          .say(GazeDirection.LEFT, "left");

  /** Words for a movement that no other item is about, so that they may start one. */
  static final List<String> OF_ONE_EYE =
      List.of("abduction", "adduction", "elevation", "depression", "abd");

  private static final Matcher<Toward> TURNED =
      PhraseTable.<Boolean>empty()
          .say(true, "abduction", "abd", "LR", "lateral rectus")
          .say(false, "adduction", "add", "MR", "medial rectus")
          .map(out -> new Toward(eye -> turned(eye, out)));

  static final Matcher<Toward> TOWARD = GAZES.map(gaze -> new Toward(eye -> gaze)).or(TURNED);

  /** The fast phase of a nystagmus in trade words: left beating. */
  static final Matcher<GazeDirection> BEATING =
      cursor -> GAZES.or(PLAIN).read(cursor).filter(gaze -> cursor.take("beating"));

  private Gazes() {}

  static String phrase(GazeDirection gaze) {
    return GAZES.phrase(gaze);
  }

  /** Returns a matcher of a direction behind one of the leads; right and left may stand alone. */
  static Matcher<GazeDirection> behind(String... leads) {
    List<List<String>> phrases = new ArrayList<>();
    Arrays.stream(leads).map(Lexer::words).forEach(phrases::add);
    return cursor -> behind(cursor, phrases);
  }

  /** Returns a matcher of a gaze that is named as one: in left gaze, on upgaze. */
  static Matcher<GazeDirection> in() {
    return cursor -> cursor.takeAny("in", "on") ? GAZES.read(cursor) : Optional.empty();
  }

  private static Optional<GazeDirection> behind(Cursor cursor, List<List<String>> leads) {
    for (List<String> lead : leads) {
      Optional<GazeDirection> gaze =
          cursor.attempt(c -> c.take(lead) ? GAZES.or(PLAIN).read(c) : Optional.empty());
      if (gaze.isPresent()) {
        return gaze;
      }
    }
    return Optional.empty();
  }

  private static GazeDirection turned(Site eye, boolean out) {
    return (eye == Site.RIGHT) == out ? GazeDirection.RIGHT : GazeDirection.LEFT;
  }
}
