package org.isopter.model.note.item;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.movement.DoubleVision;
import org.isopter.model.answer.movement.GazeDirection;
import org.isopter.model.answer.movement.NystagmusKind;
import org.isopter.model.answer.movement.Separation;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Eye;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Heading;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.grammar.WordLists;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Matcher;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.note.token.WrittenWords;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;
import org.isopter.model.value.Term;

/** Eye movements, double vision and nystagmus. */
final class MovementNotes {

  /** A grade of movement in a direction. */
  private record Moved(Gazes.Toward toward, Outcome<Integer> grade) {}

  private static final Slot<Moved> MOVED = Slot.values("movement", MovementNotes::moved);

  /** A direction before the eyes whose grades follow: abduction R -2 L -1. */
  private static final Slot<Gazes.Toward> DIRECTION =
      Slot.condition("direction of movement", Gazes.TOWARD);

  private static final Slot<Integer> GRADE =
      Slot.value("grade of the movement", MovementNotes::grade);

  /** That what follows is less than full, as the grades say. */
  private static final Slot<Boolean> LIMITED =
      Slot.condition(
          "limitation", PhraseTable.<Boolean>empty().say(true, "limited", "restricted", "reduced"));

  private static final Slot<Boolean> FULL =
      Slot.value(
          "full movements",
          PhraseTable.<Boolean>empty()
              .say(true, "full", "intact", "full range", "normal")
              .say(false, "rest full", "otherwise full")
              .or(Common.capitalN()));

  private static final PhraseTable<DoubleVision> DOUBLES =
      PhraseTable.of(DoubleVision.class)
          .say(DoubleVision.NONE, "no", "nil", "denies", "without", "absent");

  private static final Slot<DoubleVision> DOUBLE = Slot.value("kind of double vision", DOUBLES);

  private static final Slot<Separation> SEPARATION =
      Slot.value("separation", PhraseTable.of(Separation.class));

  private static final Slot<GazeDirection> WORST =
      Slot.value(
          "worst gaze",
          Gazes.behind(
              "worst in",
              "worst on",
              "worse in",
              "worse on",
              "worse",
              "worst",
              "worst at",
              "worse at"));

  /** Where it is double, for which the record has no place but a remark. */
  private static final Slot<GazeDirection> DOUBLE_IN =
      Slot.value("gaze in which it is double", Gazes.in());

  private static final PhraseTable<NystagmusKind> KINDS =
      PhraseTable.of(NystagmusKind.class).say(NystagmusKind.NONE, "no", "nil", "absent", "without");

  private static final Slot<NystagmusKind> KIND = Slot.value("kind of nystagmus", KINDS);

  /** A kind that the record counts among the others, and keeps by name in a remark. */
  private static final Slot<String> NAMED_KIND =
      Slot.value(
          "name of the nystagmus",
          PhraseTable.<String>empty()
              .say("see-saw", "see-saw", "seesaw")
              .say("periodic alternating", "periodic alternating")
              .say("convergence-retraction", "convergence-retraction", "convergence retraction"));

  private static final Slot<GazeDirection> FAST =
      Slot.value(
          "fast phase",
          ((Matcher<GazeDirection>)
                  cursor ->
                      Gazes.behind("fast", "fast phase", "fast phase to the")
                          .read(cursor)
                          .filter(gaze -> gaze != GazeDirection.PRIMARY))
              .or(Gazes.BEATING));

  private static final Slot<GazeDirection> SEEN_IN =
      Slot.value("gaze in which it is seen", Gazes.behind("in", "on"));

  private static final PhraseTable<Term> DOUBLING_EYES =
      WordLists.vocabulary(Movements.DIPLOPIA, "doubling-eye", word -> word + " doubles");

  private static final Slot<Term> DOUBLING = Slot.value("doubling eye", DOUBLING_EYES);

  static final List<Grammar> GRAMMARS =
      List.of(
          Grammar.of("eye movements", "EOM R abduction -2, rest full; EOM L full")
              .startsWith(
                  "EOM",
                  "EOMs",
                  "ductions",
                  "eye movements",
                  "motility",
                  "ocular motility",
                  "movements")
              .startsWith(Stream.of("add -", "add full").map(Heading::of).map(Heading::keptAsWord))
              .startsWith(Gazes.OF_ONE_EYE.stream().map(Heading::of).map(Heading::keptAsWord))
              .slots(MOVED, FULL, DIRECTION, GRADE, LIMITED)
              .whole(Movements.DUCTIONS)
              .unsided(
                  (said, heading) ->
                      said.find(FULL).equals(Optional.of(true))
                          && !said.has(MOVED)
                          && !said.has(DIRECTION))
              .build(eye -> eye.found(Movements.DUCTIONS, ductions(eye))),
          Grammar.of("double vision", "binocular horizontal diplopia worse on left gaze")
              .sides(Grammar.Sides.PAIR)
              .startsWith(
                  Stream.of("diplopia", "double vision").map(Heading::of).map(Heading::afterWords))
              .slots(DOUBLE, SEPARATION, WORST, DOUBLING, DOUBLE_IN)
              .whole(Movements.DIPLOPIA)
              .build(MovementNotes::diplopia),
          Grammar.of("nystagmus", "nystagmus OU horizontal jerk, fast left")
              .sides(Grammar.Sides.EACH_OR_BOTH)
              .startsWith(Stream.of(Heading.of("nystagmus").afterWords()))
              .slots(KIND, NAMED_KIND, FAST, SEEN_IN)
              .whole(Movements.NYSTAGMUS)
              .unsided(
                  (said, heading) ->
                      said.has(NAMED_KIND)
                          || said.find(KIND).equals(Optional.of(NystagmusKind.NONE)))
              .unsidedAt(Site.PAIR)
              .build(MovementNotes::nystagmus));

  static final List<Wording<?>> WORDINGS =
      List.of(
          Wording.of(Movements.DUCTIONS, "EOM", MovementNotes::words),
          Wording.of(Movements.DIPLOPIA, "diplopia", MovementNotes::words),
          Wording.of(Movements.NYSTAGMUS, "nystagmus", MovementNotes::words));

  private MovementNotes() {}

  private static Optional<Moved> moved(Cursor cursor) {
    return cursor
        .attempt(MovementNotes::toward)
        .or(() -> cursor.attempt(MovementNotes::gradeFirst));
  }

  /** Reads a grade with its sign before the direction: -1 abduction, -3 in depression. */
  private static Optional<Moved> gradeFirst(Cursor cursor) {
    boolean sign = cursor.sees("-");
    Optional<Integer> grade = sign ? grade(cursor) : Optional.empty();
    cursor.takeAny("in", "of");
    return grade.flatMap(
        found -> Gazes.TOWARD.read(cursor).map(toward -> new Moved(toward, Outcome.found(found))));
  }

  private static Optional<Moved> toward(Cursor cursor) {
    return Gazes.TOWARD
        .read(cursor)
        .flatMap(
            toward ->
                Common.outcome(MovementNotes::grade)
                    .read(cursor)
                    .map(grade -> new Moved(toward, grade)));
  }

  /** Reads a grade: its sign is said unless it is nought, which full is. */
  private static Optional<Integer> grade(Cursor cursor) {
    return cursor
        .attempt(Cursor::signed)
        .or(() -> cursor.take("full") ? Optional.of(BigDecimal.ZERO) : Optional.empty())
        .or(() -> cursor.number().filter(number -> number.signum() == 0))
        .filter(number -> number.scale() == 0 && number.precision() < 4)
        .map(number -> number.intValueExact());
  }

  private static Movements.Ductions ductions(Eye eye) throws NotRead {
    Map<GazeDirection, Outcome<Integer>> grades = new EnumMap<>(GazeDirection.class);
    for (Moved moved : eye.all(MOVED)) {
      if (grades.put(moved.toward().of(eye.site()), moved.grade()) != null) {
        throw NotRead.because("a direction of movement is said twice");
      }
    }
    if (eye.has(DIRECTION) || eye.has(GRADE)) {
      graded(eye, grades);
    } else if (eye.has(FULL)) {
      fill(grades, eye.get(FULL));
    }
    if (eye.has(LIMITED) && grades.values().stream().noneMatch(MovementNotes::isLess)) {
      throw NotRead.because("it is limited, and no grade says where");
    }
    return new Movements.Ductions(grades);
  }

  private static boolean isLess(Outcome<Integer> grade) {
    return grade.ifFound().filter(found -> found < 0).isPresent();
  }

  /** Adds the grade of the direction that stands before the eyes. */
  private static void graded(Eye eye, Map<GazeDirection, Outcome<Integer>> grades) throws NotRead {
    boolean rest = eye.has(FULL) && !eye.get(FULL);
    boolean full = eye.has(FULL) && !rest;
    Gazes.Toward toward = eye.get(DIRECTION);
    int grade = full ? 0 : eye.get(GRADE);
    if (!grades.isEmpty()
        || (full && eye.has(GRADE))
        || !eye.isBefore(DIRECTION, full ? FULL : GRADE)) {
      throw NotRead.because("it is not clear of which direction this is the grade");
    }
    grades.put(toward.of(eye.site()), Outcome.found(grade));
    if (rest) {
      fill(grades, false);
    }
  }

  private static void fill(Map<GazeDirection, Outcome<Integer>> grades, boolean whole)
      throws NotRead {
    if (whole != grades.isEmpty()) {
      throw NotRead.because(
          whole
              ? "the movements are full, and yet a direction is told apart"
              : "the rest is full, and yet no direction is told apart");
    }
    Gazes.MOVES.forEach(gaze -> grades.putIfAbsent(gaze, Outcome.found(0)));
  }

  private static void diplopia(Eye eye) throws NotRead {
    eye.found(
        Movements.DIPLOPIA,
        new Movements.Diplopia(
            eye.get(DOUBLE), eye.find(SEPARATION), eye.find(WORST), eye.find(DOUBLING)));
    Optional<GazeDirection> gaze = eye.find(DOUBLE_IN);
    if (gaze.isPresent() && eye.get(DOUBLE) == DoubleVision.NONE) {
      throw NotRead.because("it may be double in another gaze");
    }
    eye.remark(WrittenWords.maybe(gaze, where -> "in " + Gazes.phrase(where)));
  }

  private static void nystagmus(Eye eye) throws NotRead {
    Optional<String> name = eye.find(NAMED_KIND);
    if (name.isPresent() && eye.has(KIND)) {
      throw NotRead.because("two kinds of nystagmus are named");
    }
    NystagmusKind kind = name.isPresent() ? NystagmusKind.OTHER : eye.get(KIND);
    eye.found(
        Movements.NYSTAGMUS, new Movements.Nystagmus(kind, eye.find(FAST), eye.find(SEEN_IN)));
    eye.remark(name.orElse(""));
  }

  private static String words(Movements.Ductions ductions) {
    List<String> words = new ArrayList<>();
    ductions
        .grades()
        .forEach(
            (gaze, outcome) ->
                words.add(
                    Gazes.phrase(gaze)
                        + " "
                        + outcome.fold(MovementNotes::gradeWords, Common.ABSENCES::phrase)));
    return String.join(" ", words);
  }

  private static String gradeWords(int grade) {
    return grade == 0 ? "0" : "%+d".formatted(grade);
  }

  private static String words(Movements.Diplopia diplopia) {
    return WrittenWords.join(
        WrittenWords.of(diplopia.kind()),
        WrittenWords.maybe("", diplopia.separation()),
        WrittenWords.maybe(diplopia.worst(), gaze -> "worst in " + Gazes.phrase(gaze)),
        WrittenWords.maybe(diplopia.doubling(), DOUBLING_EYES::phrase));
  }

  private static String words(Movements.Nystagmus nystagmus) {
    return WrittenWords.join(
        WrittenWords.of(nystagmus.kind()),
        WrittenWords.maybe(nystagmus.fast(), gaze -> "fast " + Gazes.phrase(gaze)),
        WrittenWords.maybe(nystagmus.seenIn(), gaze -> "in " + Gazes.phrase(gaze)));
  }
}
