package org.isopter.model.note.item;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.movement.Alignment;
import org.isopter.model.answer.movement.FixationDistance;
import org.isopter.model.catalogue.Control;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Matcher;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.note.token.WrittenWords;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/** The words and forms of a deviation of the eyes. */
final class AlignmentWords {

  record Stand(Alignment alignment, Optional<Control> control) {
    static Stand of(Alignment alignment, Control control) {
      return new Stand(alignment, Optional.of(control));
    }

    static Stand plain(Alignment alignment) {
      return new Stand(alignment, Optional.empty());
    }
  }

  static final PhraseTable<Stand> STANDS =
      PhraseTable.<Stand>empty()
          .say(Stand.plain(Alignment.STRAIGHT), "straight", "orthotropic", "ortho", "orthophoric")
          .say(Stand.plain(Alignment.ESO), "eso")
          .say(Stand.plain(Alignment.EXO), "exo")
          .say(Stand.plain(Alignment.RIGHT_HYPER), "right hyper", "R hyper")
          .say(Stand.plain(Alignment.LEFT_HYPER), "left hyper", "L hyper")
          .say(
              Stand.of(Alignment.ESO, Control.MANIFEST),
              "eso manifest",
              "ET",
              "esotropia",
              "SOT",
              "convergent squint")
          .say(
              Stand.of(Alignment.EXO, Control.MANIFEST),
              "exo manifest",
              "XT",
              "exotropia",
              "XOT",
              "divergent squint")
          .say(
              Stand.of(Alignment.RIGHT_HYPER, Control.MANIFEST),
              "right hyper manifest",
              "RHT",
              "right hypertropia",
              "R hypertropia")
          .say(
              Stand.of(Alignment.LEFT_HYPER, Control.MANIFEST),
              "left hyper manifest",
              "LHT",
              "left hypertropia",
              "L hypertropia")
          .say(Stand.of(Alignment.ESO, Control.LATENT), "eso latent", "esophoria", "SOP")
          .say(Stand.of(Alignment.EXO, Control.LATENT), "exo latent", "exophoria", "XOP")
          .say(
              Stand.of(Alignment.RIGHT_HYPER, Control.LATENT),
              "right hyper latent",
              "right hyperphoria",
              "R hyperphoria")
          .say(
              Stand.of(Alignment.LEFT_HYPER, Control.LATENT),
              "left hyper latent",
              "left hyperphoria",
              "L hyperphoria")
          .say(
              Stand.of(Alignment.ESO, Control.INTERMITTENT),
              "eso intermittent",
              "E(T)",
              "intermittent esotropia",
              "intermittent ET")
          .say(
              Stand.of(Alignment.EXO, Control.INTERMITTENT),
              "exo intermittent",
              "X(T)",
              "intermittent exotropia",
              "intermittent XT")
          .say(Stand.of(Alignment.RIGHT_HYPER, Control.INTERMITTENT), "right hyper intermittent")
          .say(Stand.of(Alignment.LEFT_HYPER, Control.INTERMITTENT), "left hyper intermittent");

  static final PhraseTable<FixationDistance> FIXATIONS =
      PhraseTable.of(FixationDistance.class)
          .say(FixationDistance.FAR, "distance", "at distance", "dist", "D", "in the distance")
          .say(FixationDistance.NEAR, "at near", "N", "NV");

  /** A squint that names the eye that turns; the record keeps that eye as a remark. */
  private record Turned(Stand stand, String eye) {}

  /**
   * How the eyes stand, at which distances of fixation.
   *
   * @param stand the deviation; none where it is that of the position before
   * @param amount its size, when measured
   * @param fixations the distances
   * @param leads whether the distance stands before the deviation
   * @param remarks what the record has no place for
   */
  record Position(
      Optional<Stand> stand,
      Optional<Quantity> amount,
      List<FixationDistance> fixations,
      boolean leads,
      List<String> remarks) {}

  private record Measured(Quantity amount, Optional<Stand> stand) {}

  // Some squints name the eye that turns in one word (common practice, no source).
  private static final PhraseTable<Turned> TURNED = turned();

  private static final PhraseTable<String> SIZES =
      PhraseTable.<String>empty()
          .say("small", "small", "sm", "slight", "sl", "minimal", "min")
          .say("moderate", "moderate", "mod")
          .say("large", "large", "lge", "lg");

  private static final PhraseTable<String> RECOVERIES =
      PhraseTable.<String>empty()
          .say("good recovery", "good recovery", "good rec", "rapid recovery", "rapid rec")
          .say("good recovery", "well controlled", "good control", "with good recovery")
          .say("slow recovery", "slow recovery", "slow rec", "delayed recovery", "delayed rec")
          .say("poor recovery", "poor recovery", "poor rec", "poor control", "poorly controlled")
          .say("moderate recovery", "moderate recovery", "mod rec", "moderate rec");

  static final Matcher<Position> POSITION = AlignmentWords::position;

  private AlignmentWords() {}

  /** Returns all phrases with which a deviation may start. */
  static List<String> starts() {
    List<String> starts = new ArrayList<>(STANDS.words());
    starts.addAll(TURNED.words());
    return starts;
  }

  private static PhraseTable<Turned> turned() {
    PhraseTable<Turned> words = PhraseTable.empty();
    for (String side : List.of("R", "L")) {
      String eye = (side.equals("R") ? "right" : "left") + " eye turns";
      for (String turn : List.of("ET", "SOT", "esotropia", "convergent squint")) {
        say(words, new Turned(Stand.of(Alignment.ESO, Control.MANIFEST), eye), side, turn);
      }
      for (String turn : List.of("XT", "XOT", "exotropia", "divergent squint")) {
        say(words, new Turned(Stand.of(Alignment.EXO, Control.MANIFEST), eye), side, turn);
      }
    }
    return words;
  }

  private static void say(PhraseTable<Turned> words, Turned turned, String side, String turn) {
    String whole = side.equals("R") ? "right" : "left";
    words.say(turned, side + " " + turn, whole + " " + turn);
    if (turn.length() <= 3) {
      words.say(turned, side + turn);
    }
  }

  private static Optional<Position> position(Cursor cursor) {
    List<String> remarks = new ArrayList<>();
    List<FixationDistance> fixations = new ArrayList<>();
    cursor.attempt(FIXATIONS).ifPresent(fixations::add);
    boolean leads = !fixations.isEmpty();
    if (leads) {
      cursor.attempt(AlignmentWords::further).ifPresent(fixations::add);
      cursor.attempt(AcuityWords.CORRECTIONS).map(WrittenWords::of).ifPresent(remarks::add);
      cursor.attempt(AlignmentWords::mark);
    }
    Optional<Measured> first = cursor.attempt(AlignmentWords::amountOf);
    cursor.attempt(SIZES).ifPresent(remarks::add);
    Optional<Turned> turned = cursor.attempt(TURNED);
    turned.ifPresent(found -> remarks.add(found.eye()));
    Optional<Stand> stand = turned.map(Turned::stand).or(() -> cursor.attempt(STANDS));
    if (stand.isPresent() && remarks.stream().noneMatch(SIZES.words()::contains)) {
      cursor.attempt(AlignmentWords::sizeBehind).ifPresent(remarks::add);
    }
    boolean nearOnly = !leads || fixations.equals(List.of(FixationDistance.NEAR));
    boolean mark = stand.isPresent() && nearOnly && cursor.isClose();
    if (mark && cursor.takeAny("'", "\u2019") && !leads) {
      fixations.add(FixationDistance.NEAR);
      cursor.takeAny("n", "near");
    }
    Optional<Measured> before =
        first
            .or(() -> cursor.attempt(c -> measured(c, stand.isPresent())))
            .or(() -> cursor.attempt(AlignmentWords::measuredAt));
    if (!leads && fixations.isEmpty()) {
      trailing(cursor, fixations);
    }
    boolean behind = !leads && before.isEmpty() && fixations.size() == 1;
    Optional<Measured> measured = behind ? cursor.attempt(c -> measured(c, true)) : before;
    cursor.attempt(AlignmentWords::recovery).ifPresent(remarks::add);
    if (cursor.take(List.of("in", "primary")) || cursor.take("primary")) {
      remarks.add("primary position");
    }
    boolean tells = stand.isPresent() || (measured.isPresent() && !fixations.isEmpty());
    return Optional.of(
            new Position(
                stand.or(() -> measured.flatMap(Measured::stand)),
                measured.map(Measured::amount),
                fixations,
                leads || (behind && measured.isPresent()),
                remarks))
        .filter(any -> tells);
  }

  /** Reads a size behind its deviation: LET mod; behind a comma only where nothing follows. */
  private static Optional<String> sizeBehind(Cursor cursor) {
    boolean comma = cursor.take(",");
    return SIZES.read(cursor).filter(any -> !comma || ends(cursor));
  }

  /** Reads a second distance before the deviation of both: D and N: LET. */
  private static Optional<FixationDistance> further(Cursor cursor) {
    return cursor.takeAny("and", "+", "/") ? FIXATIONS.read(cursor) : Optional.empty();
  }

  /** Reads what stands between a distance and its deviation; a dash has a space on either side. */
  private static Optional<Boolean> mark(Cursor cursor) {
    boolean close = cursor.isClose();
    boolean dash = !close && cursor.take("-");
    return Optional.of(dash ? !cursor.isClose() : cursor.takeAny(":", "=")).filter(taken -> taken);
  }

  /** Reads an amount before the deviation that it is of: 14 PD ET, 4 XOP. */
  private static Optional<Measured> amountOf(Cursor cursor) {
    Optional<Measured> amount = measured(cursor, true);
    int here = cursor.place();
    boolean named = cursor.attempt(TURNED).isPresent() || cursor.attempt(STANDS).isPresent();
    cursor.back(here);
    return amount.filter(found -> named && found.stand().isEmpty());
  }

  /**
   * Reads an amount of the deviation before, its distance behind it: ET 8 at distance, 2 at near.
   */
  private static Optional<Measured> measuredAt(Cursor cursor) {
    Optional<Measured> amount = measured(cursor, true);
    int here = cursor.place();
    boolean distance = cursor.attempt(FIXATIONS).isPresent();
    cursor.back(here);
    return amount.filter(any -> distance);
  }

  private static void trailing(Cursor cursor, List<FixationDistance> fixations) {
    cursor.attempt(FIXATIONS).ifPresent(fixations::add);
    Optional<FixationDistance> more =
        cursor.attempt(
            c ->
                c.takeAny("and", "+", "/", ",")
                    ? FIXATIONS.read(c).filter(f -> ends(c))
                    : Optional.empty());
    more.filter(any -> fixations.size() == 1).ifPresent(fixations::add);
  }

  /** Says whether nothing follows that a distance before it could be said of. */
  private static boolean ends(Cursor cursor) {
    return cursor.atEnd() || cursor.sees(",") || cursor.sees(")");
  }

  private static Optional<String> recovery(Cursor cursor) {
    cursor.take(",");
    return RECOVERIES.read(cursor);
  }

  /** Reads prism dioptres; the base of the prism that neutralises it tells which way it turns. */
  private static Optional<Measured> measured(Cursor cursor, boolean bare) {
    Optional<BigDecimal> number = cursor.number();
    boolean unit = cursor.takeAny("pd", "\u0394", "\u2206", "\u03b4", "^");
    boolean in = cursor.take("bi") || cursor.take(List.of("base", "in"));
    boolean out = !in && (cursor.take("bo") || cursor.take(List.of("base", "out")));
    boolean other =
        cursor.sees("\u00b0") || cursor.sees("/") || cursor.sees("%") || cursor.sees("mm");
    return number
        .filter(any -> (unit || in || out || bare) && !other)
        .map(pd -> new Measured(new Quantity(pd, Unit.PRISM_DIOPTRE), base(in, out)));
  }

  private static Optional<Stand> base(boolean in, boolean out) {
    return in
        ? Optional.of(Stand.plain(Alignment.EXO))
        : Optional.of(Stand.plain(Alignment.ESO)).filter(any -> out);
  }
}
