package org.isopter.model.note.item;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.tissue.DiscColour;
import org.isopter.model.answer.tissue.DiscMargin;
import org.isopter.model.answer.tissue.DiscSector;
import org.isopter.model.answer.tissue.DiscSign;
import org.isopter.model.answer.tissue.FundusMethod;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.Globes;
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
import org.isopter.model.value.Term;

/** The optic disc. */
final class DiscNotes {

  private static final Term UNSEEN =
      WordLists.answer(WordLists.vocabulary(Globes.FUNDUS_VIEW), "no view");

  /** What starts an item that is said of both discs where it names no eye. */
  private static final String EITHER = "either disc";

  private static final Discs.Colour PINK = Discs.Colour.of(DiscColour.PINK);

  private static final PhraseTable<Discs.Colour> COLOURS = colours();

  // A bare "blurred" does not say whether all of the margin is meant.
  private static final PhraseTable<DiscMargin> MARGINS =
      PhraseTable.<DiscMargin>empty()
          .say(DiscMargin.CLEAR, "clear", "sharp", "distinct", "sharp margins", "clear margins")
          .say(
              DiscMargin.CLEAR,
              "distinct margins",
              "margins sharp",
              "margins clear",
              "sharp margin")
          .say(DiscMargin.PARTLY_BLURRED, "partly blurred", "blurred in part")
          .say(DiscMargin.BLURRED, "blurred all round");

  private static final PhraseTable<Presence> SWELLINGS =
      presence("swollen", "swelling", "oedema", "edema")
          .say(Presence.ABSENT, "not swollen", "flat");

  private static final PhraseTable<Presence> HAEMORRHAGES =
      presence("haemorrhage", "haemorrhage", "hemorrhage", "haem");

  private static final PhraseTable<Presence> PULSATIONS =
      presence("SVP present", "SVP").say(Presence.PRESENT, "SVP +").say(Presence.ABSENT, "SVP -");

  private static final PhraseTable<Presence> SIGNS =
      PhraseTable.of(Presence.class)
          .say(Presence.PRESENT, "+", "yes", "positive", "+ve")
          .say(Presence.ABSENT, "-", "no", "none", "negative", "nil", "without", "-ve", "neg");

  private static final Slot<Outcome<Discs.Colour>> COLOUR =
      Slot.value("colour of the disc", Common.named(COLOURS, "colour", "color"));

  private static final Slot<Outcome<DiscMargin>> MARGIN =
      Slot.value("margin of the disc", Common.named(MARGINS, "margin", "margins"));

  private static final Slot<Outcome<Presence>> SWELLING =
      Slot.value("swelling of the disc", sign(SWELLINGS, "swelling"));

  private static final Slot<Outcome<Presence>> HAEMORRHAGE =
      Slot.value("haemorrhage of the disc", sign(HAEMORRHAGES, "haemorrhage"));

  private static final Slot<Outcome<Presence>> PULSATION =
      Slot.value("venous pulsation", sign(PULSATIONS, "SVP"));

  /** Whether the sign that the heading names is there; beside an eye its name says that it is. */
  private static final Slot<Presence> NAMED = Slot.value("presence", DiscNotes::sign);

  /** That a haemorrhage is there besides: papilloedema R with haemorrhage. */
  private static final Slot<Boolean> WITH_BLOOD =
      Slot.value("haemorrhage besides", DiscNotes::beforeBlood);

  /** That the disc could not be seen is all that is said of it. */
  private static final Slot<Boolean> NO_VIEW =
      Slot.value(
          "view of the disc",
          PhraseTable.<Boolean>empty()
              .say(true, "no view", "not visible", "cannot be seen", "could not be seen"));

  // A normal disc is pink, with a clear margin and without swelling (common practice, no source).
  private static final Slot<Boolean> NORMAL =
      Slot.value(
          "state of the disc",
          PhraseTable.<Boolean>empty().say(true, "normal").or(Common.capitalN()));

  private static final Slot<Integer> FRISEN =
      Slot.value(
          "Frisen grade",
          cursor -> cursor.takeAny("frisen", "fris\u00e9n") ? grade(cursor) : Optional.empty());

  private static final Slot<Integer> GRADE = Slot.value("grade", DiscNotes::grade);

  private static final Slot<Integer> CLOCK_HOUR = Slot.value("clock hour", DiscNotes::clockHour);

  /** Signs that adjectives name beside the other facts of a disc. */
  private static final Slot<Discs.Sign> SIGN =
      Slot.values(
          "sign of the disc",
          PhraseTable.<Discs.Sign>empty()
              .say(new Discs.Sign(DiscSign.CROWDED, Presence.PRESENT), "crowded")
              .say(new Discs.Sign(DiscSign.CROWDED, Presence.ABSENT), "not crowded")
              .say(new Discs.Sign(DiscSign.TILTED, Presence.PRESENT), "tilted")
              .say(new Discs.Sign(DiscSign.TILTED, Presence.ABSENT), "not tilted")
              .say(new Discs.Sign(DiscSign.RIM_NOTCH, Presence.PRESENT), "notch", "notched")
              .say(new Discs.Sign(DiscSign.RIM_NOTCH, Presence.ABSENT), "no notch"));

  static final Slot<FundusMethod> METHOD =
      Slot.condition(
          "technique",
          PhraseTable.of(FundusMethod.class)
              .say(FundusMethod.BINOCULAR_INDIRECT_OPHTHALMOSCOPY, "BIO")
              .say(FundusMethod.SLIT_LAMP, "slitlamp")
              .say(FundusMethod.PHOTOGRAPH, "photo", "fundus photograph"));

  static final List<Grammar> GRAMMARS =
      List.of(
          Grammar.of("optic disc", "disc R pink, sharp margins")
              .startsWith(
                  Stream.of("disc", "disk", "optic disc", "optic disk")
                      .map(Heading::of)
                      .map(Heading::afterWords))
              .startsWith(Stream.of(Heading.of(EITHER)))
              .startsWith(
                  Stream.of("discs", "disks", "optic discs", "optic disks")
                      .map(Heading::of)
                      .map(Heading::ofBothEyes)
                      .map(Heading::afterWords))
              .slots(NORMAL, COLOUR, MARGIN, SWELLING, FRISEN, HAEMORRHAGE, CLOCK_HOUR, PULSATION)
              .slots(CupNotes.UPRIGHT, CupNotes.ACROSS, CupNotes.OF_NO_DIRECTION, Common.DEGREE)
              .slots(SIGN, NO_VIEW)
              .onClockFace()
              .method(METHOD)
              .whole(
                  Discs.VERTICAL_CUP,
                  Discs.HORIZONTAL_CUP,
                  Discs.MARGIN,
                  Discs.COLOUR,
                  Discs.SWELLING,
                  Discs.HAEMORRHAGE,
                  Discs.VENOUS_PULSATION)
              .unsided(
                  (said, heading) ->
                      (heading.plural() || heading.spoken().equals(EITHER)) && !CupNotes.isIn(said))
              .build(DiscNotes::disc),
          sign("spontaneous venous pulsation", "SVP R present L absent")
              .startsWith(
                  Stream.of("SVP", "spontaneous venous pulsation")
                      .map(Heading::of)
                      .map(Heading::afterWords))
              .whole(Discs.VENOUS_PULSATION)
              .build(eye -> eye.found(Discs.VENOUS_PULSATION, eye.get(NAMED))),
          Grammar.of("margin of the disc", "disc margin R sharp L blurred all round")
              .startsWith("disc margin", "disc margins")
              .slots(MARGIN, COLOUR, SWELLING, HAEMORRHAGE, CLOCK_HOUR, PULSATION)
              .method(METHOD)
              .onClockFace()
              .whole(Discs.MARGIN)
              .build(
                  eye -> {
                    eye.outcome(Discs.MARGIN, eye.get(MARGIN));
                    besides(eye);
                  }),
          sign("swelling of the disc", "disc swelling R present L absent")
              .startsWith(Stream.of(Heading.of("disc swelling").afterWords()))
              .slots(NORMAL, COLOUR, MARGIN, FRISEN, HAEMORRHAGE, CLOCK_HOUR, PULSATION)
              .slots(WITH_BLOOD, Common.DEGREE)
              .whole(Discs.SWELLING)
              .build(DiscNotes::swelling),
          sign("haemorrhage of the disc", "disc haemorrhage R present L absent")
              .startsWith(Stream.of(Heading.of("disc haemorrhage").afterWords()))
              .slots(NORMAL, COLOUR, MARGIN, SWELLING, CLOCK_HOUR, PULSATION)
              .whole(Discs.HAEMORRHAGE)
              .build(DiscNotes::haemorrhage),
          Grammar.of("swelling by its grade", "Frisen R 2 L 3")
              .startsWith("frisen", "frisen grade")
              .slots(GRADE)
              .method(METHOD)
              .whole(Discs.SWELLING)
              .build(eye -> eye.found(Discs.SWELLING, graded(eye.get(GRADE)))));

  static final List<Wording<?>> WORDINGS =
      List.of(
          Wording.of(Discs.MARGIN, "disc", "margin", MARGINS::phrase),
          Wording.of(Discs.COLOUR, "disc", "colour", COLOURS::phrase),
          Wording.of(Discs.SWELLING, "disc", "swelling", DiscNotes::words),
          Wording.of(Discs.HAEMORRHAGE, "disc", "haemorrhage", DiscNotes::words),
          Wording.of(Discs.VENOUS_PULSATION, "SVP", WrittenWords::of));

  private DiscNotes() {}

  private static PhraseTable<Discs.Colour> colours() {
    PhraseTable<Discs.Colour> words = PhraseTable.empty();
    for (DiscColour colour : DiscColour.values()) {
      words.say(Discs.Colour.of(colour), WrittenWords.of(colour));
    }
    for (DiscSector sector : DiscSector.values()) {
      String name = WrittenWords.of(sector);
      words.say(
          new Discs.Colour(DiscColour.SECTOR_PALLOR, Optional.of(sector)),
          name + " sector pallor",
          "sector pallor " + name);
    }
    return words
        .say(Discs.Colour.of(DiscColour.PALE), "pallor")
        .say(Discs.Colour.of(DiscColour.HYPERAEMIC), "hyperemic");
  }

  /** Returns the phrases for a sign: its name for present, and what may stand around it. */
  private static PhraseTable<Presence> presence(String present, String... names) {
    PhraseTable<Presence> words = PhraseTable.<Presence>empty().say(Presence.PRESENT, present);
    for (String name : names) {
      words
          .say(Presence.PRESENT, name + " present", name + " +")
          .say(Presence.ABSENT, "no " + name, name + " absent")
          .say(Presence.EQUIVOCAL, name + " equivocal");
    }
    return words;
  }

  private static Matcher<Outcome<Presence>> sign(PhraseTable<Presence> words, String name) {
    PhraseTable<String> lead = PhraseTable.<String>empty().say(name, name);
    Matcher<Outcome<Presence>> absent =
        cursor ->
            lead.read(cursor)
                .flatMap(any -> Common.ABSENCES.read(cursor))
                .map(Outcome::<Presence>absent);
    return absent.or(words.map(Outcome::<Presence>found));
  }

  private static Optional<Integer> grade(Cursor cursor) {
    cursor.take("grade");
    return cursor.whole();
  }

  private static Optional<Integer> clockHour(Cursor cursor) {
    cursor.take("at");
    return cursor.whole().filter(hour -> cursor.take("o'clock"));
  }

  /** Begins the item of a sign: denied without a side, it is denied of both eyes. */
  private static Grammar.Draft sign(String name, String example) {
    return Grammar.of(name, example)
        .slots(NAMED)
        .method(METHOD)
        .onClockFace()
        .unsided((said, heading) -> said.find(NAMED).equals(Optional.of(Presence.ABSENT)));
  }

  /** Reads whether a sign is there; a dash before anything else may be no more than a dash. */
  private static Optional<Presence> sign(Cursor cursor) {
    boolean dash = cursor.sees("-");
    Optional<Presence> sign = SIGNS.read(cursor);
    boolean other = sign.isPresent() && cursor.attempt(Common.SIDES).isPresent();
    boolean ends = cursor.atEnd() || cursor.sees(",") || (other && cursor.sees("+"));
    cursor.back(other ? cursor.place() - 1 : cursor.place());
    return sign.filter(any -> !dash || ends);
  }

  private static Optional<Boolean> beforeBlood(Cursor cursor) {
    boolean joint = !cursor.atEnd() && Common.isConnector(cursor.token());
    cursor.back(cursor.place() + (joint ? 1 : 0));
    int blood = cursor.place();
    boolean there = joint && cursor.attempt(HAEMORRHAGES).equals(Optional.of(Presence.PRESENT));
    cursor.back(blood);
    return Optional.of(true).filter(any -> there);
  }

  /** Returns whether the sign is there; what else is said of an eye may be all that is meant. */
  private static Presence presence(Eye eye) throws NotRead {
    boolean besides = eye.has(WITH_BLOOD) || eye.isSetOff(HAEMORRHAGE);
    boolean blood = eye.has(HAEMORRHAGE) && !besides;
    boolean more = Stream.of(COLOUR, MARGIN, SWELLING, PULSATION).anyMatch(eye::has);
    return blood || more ? eye.get(NAMED) : eye.find(NAMED).orElse(Presence.PRESENT);
  }

  private static void swelling(Eye eye) throws NotRead {
    if (eye.has(NORMAL) && !eye.has(NAMED)) {
      disc(eye);
      return;
    }
    Presence presence = presence(eye);
    eye.found(Discs.SWELLING, new Discs.Swelling(presence, eye.find(FRISEN)));
    eye.degree(presence == Presence.PRESENT);
    eye.outcomeOf(Discs.MARGIN, MARGIN);
    besides(eye);
  }

  private static void haemorrhage(Eye eye) throws NotRead {
    if (eye.has(NORMAL) && !eye.has(NAMED)) {
      disc(eye);
      return;
    }
    eye.found(Discs.HAEMORRHAGE, new Discs.Haemorrhage(presence(eye), eye.find(CLOCK_HOUR)));
    eye.outcomeOf(Discs.MARGIN, MARGIN);
    besides(eye);
  }

  /** Adds what else is said of a disc behind the name of a part or sign of it. */
  private static void besides(Eye eye) throws NotRead {
    eye.outcomeOf(Discs.COLOUR, COLOUR);
    if (eye.has(SWELLING)) {
      eye.outcome(
          Discs.SWELLING,
          eye.get(SWELLING).map(sign -> new Discs.Swelling(sign, Optional.empty())));
    }
    if (eye.has(HAEMORRHAGE)) {
      Optional<Integer> hour = eye.find(CLOCK_HOUR);
      eye.outcome(
          Discs.HAEMORRHAGE, eye.get(HAEMORRHAGE).map(sign -> new Discs.Haemorrhage(sign, hour)));
    }
    eye.outcomeOf(Discs.VENOUS_PULSATION, PULSATION);
  }

  private static void disc(Eye eye) throws NotRead {
    if (eye.has(NO_VIEW)) {
      noView(eye);
    }
    if (eye.has(NORMAL)) {
      normal(eye);
    }
    eye.outcomeOf(Discs.COLOUR, COLOUR);
    eye.outcomeOf(Discs.MARGIN, MARGIN);
    Optional<Outcome<Presence>> swelling = eye.find(SWELLING);
    if (swelling.isPresent()) {
      Optional<Integer> grade = swelling.get().ifFound().flatMap(any -> eye.find(FRISEN));
      eye.outcome(Discs.SWELLING, swelling.get().map(sign -> new Discs.Swelling(sign, grade)));
    } else if (eye.has(FRISEN)) {
      eye.found(Discs.SWELLING, graded(eye.get(FRISEN)));
    }
    Optional<Outcome<Presence>> blood = eye.find(HAEMORRHAGE);
    if (blood.isPresent()) {
      Optional<Integer> hour = blood.get().ifFound().flatMap(any -> eye.find(CLOCK_HOUR));
      eye.outcome(Discs.HAEMORRHAGE, blood.get().map(sign -> new Discs.Haemorrhage(sign, hour)));
    }
    eye.outcomeOf(Discs.VENOUS_PULSATION, PULSATION);
    CupNotes.ratios(eye);
    for (Discs.Sign sign : eye.all(SIGN)) {
      eye.found(Discs.SIGN, sign);
    }
    eye.degree(isThere(eye));
  }

  /**
   * Says whether a swelling or a change of colour is there, of which there may be much or little.
   */
  private static boolean isThere(Eye eye) {
    boolean swollen =
        eye.find(SWELLING).flatMap(Outcome::ifFound).equals(Optional.of(Presence.PRESENT));
    Optional<Discs.Colour> colour = eye.find(COLOUR).flatMap(Outcome::ifFound);
    return swollen || colour.filter(found -> found.colour() != DiscColour.PINK).isPresent();
  }

  private static void noView(Eye eye) throws NotRead {
    boolean more =
        Stream.of(NORMAL, COLOUR, MARGIN, SWELLING, FRISEN, HAEMORRHAGE, PULSATION, SIGN)
            .anyMatch(eye::has);
    if (more || CupNotes.RATIOS.stream().anyMatch(eye::has)) {
      throw NotRead.because("the disc was not seen, and yet something is said of it");
    }
    eye.found(Globes.FUNDUS_VIEW, UNSEEN);
  }

  /** Returns the swelling that a grade alone states: a disc of grade 0 is not swollen. */
  private static Discs.Swelling graded(int frisen) {
    Presence presence = frisen == 0 ? Presence.ABSENT : Presence.PRESENT;
    return new Discs.Swelling(presence, Optional.of(frisen));
  }

  /** Adds what a normal disc is; what is said of it besides must not contradict that. */
  private static void normal(Eye eye) throws NotRead {
    requireNormal(eye, COLOUR, PINK);
    requireNormal(eye, MARGIN, DiscMargin.CLEAR);
    requireNormal(eye, SWELLING, Presence.ABSENT);
    if (!eye.has(COLOUR)) {
      eye.found(Discs.COLOUR, PINK);
    }
    if (!eye.has(MARGIN)) {
      eye.found(Discs.MARGIN, DiscMargin.CLEAR);
    }
    if (!eye.has(SWELLING)) {
      eye.found(Discs.SWELLING, new Discs.Swelling(Presence.ABSENT, Optional.empty()));
    }
  }

  private static <V> void requireNormal(Eye eye, Slot<Outcome<V>> slot, V normal) throws NotRead {
    boolean other =
        eye.find(slot).filter(told -> !told.ifFound().equals(Optional.of(normal))).isPresent();
    if (other || eye.has(FRISEN)) {
      throw NotRead.because("the disc is normal, and yet a part of that is told apart");
    }
  }

  private static String words(Discs.Swelling swelling) {
    return WrittenWords.join(
        WrittenWords.of(swelling.presence()),
        WrittenWords.maybe(swelling.frisen(), grade -> "frisen " + grade));
  }

  private static String words(Discs.Haemorrhage haemorrhage) {
    return WrittenWords.join(
        WrittenWords.of(haemorrhage.presence()),
        WrittenWords.maybe(haemorrhage.clockHour(), hour -> "at " + hour + " o'clock"));
  }
}
