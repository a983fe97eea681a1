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

  static final PhraseTable<Presence> HAEMORRHAGES =
      presence("haemorrhage", "haemorrhage", "hemorrhage", "haem");

  private static final PhraseTable<Presence> PULSATIONS =
      presence("SVP present", "SVP").say(Presence.PRESENT, "SVP +").say(Presence.ABSENT, "SVP -");

  static final Slot<Outcome<Discs.Colour>> COLOUR =
      Slot.value("colour of the disc", Common.named(COLOURS, "colour", "color"));

  static final Slot<Outcome<DiscMargin>> MARGIN =
      Slot.value("margin of the disc", Common.named(MARGINS, "margin", "margins"));

  static final Slot<Outcome<Presence>> SWELLING =
      Slot.value("swelling of the disc", sign(SWELLINGS, "swelling"));

  static final Slot<Outcome<Presence>> HAEMORRHAGE =
      Slot.value("haemorrhage of the disc", sign(HAEMORRHAGES, "haemorrhage"));

  static final Slot<Outcome<Presence>> PULSATION =
      Slot.value("venous pulsation", sign(PULSATIONS, "SVP"));

  /** That the disc could not be seen is all that is said of it. */
  private static final Slot<Boolean> NO_VIEW =
      Slot.value(
          "view of the disc",
          PhraseTable.<Boolean>empty()
              .say(true, "no view", "not visible", "cannot be seen", "could not be seen"));

  // A normal disc is pink, with a clear margin and without swelling (common practice, no source).
  static final Slot<Boolean> NORMAL =
      Slot.value(
          "state of the disc",
          PhraseTable.<Boolean>empty().say(true, "normal").or(Common.capitalN()));

  static final Slot<Integer> FRISEN =
      Slot.value(
          "Frisen grade",
          cursor -> cursor.takeAny("frisen", "fris\u00e9n") ? grade(cursor) : Optional.empty());

  private static final Slot<Integer> GRADE = Slot.value("grade", DiscNotes::grade);

  static final Slot<Integer> CLOCK_HOUR = Slot.value("clock hour", DiscNotes::clockHour);

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

  static void disc(Eye eye) throws NotRead {
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
