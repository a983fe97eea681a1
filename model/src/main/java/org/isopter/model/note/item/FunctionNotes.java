package org.isopter.model.note.item;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.isopter.model.catalogue.VisualFunctions;
import org.isopter.model.note.grammar.Eye;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.grammar.WordLists;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.note.token.WrittenWords;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Term;
import org.isopter.model.value.Unit;

/** What the two eyes see of depth, and how an eye looks at what it is shown. */
final class FunctionNotes {

  private static final PhraseTable<Term> STEREO = WordLists.vocabulary(VisualFunctions.STEREOPSIS);

  private static final Slot<Term> DEPTH = Slot.value("stereopsis", STEREO);

  private static final Slot<Quantity> DISPARITY = Slot.value("disparity", FunctionNotes::seconds);

  /** The test of stereopsis, for which the record has no place but a remark. */
  private static final Slot<String> STEREO_TEST =
      Slot.condition(
          "test",
          PhraseTable.<String>empty()
              .say("Frisby", "Frisby")
              .say("TNO", "TNO")
              .say("Titmus", "Titmus")
              .say("Randot", "Randot")
              .say("Lang", "Lang"));

  private static final PhraseTable<Boolean> CENTRAL = either("central", "eccentric");
  private static final PhraseTable<Boolean> STEADY = either("steady", "unsteady");
  private static final PhraseTable<Boolean> MAINTAINED = either("maintained", "unmaintained");
  private static final PhraseTable<Boolean> FOLLOWS = either("follows", "not following");

  private static final Slot<Boolean> IS_CENTRAL = Slot.value("centre", CENTRAL);
  private static final Slot<Boolean> IS_STEADY = Slot.value("steadiness", STEADY);
  private static final Slot<Boolean> IS_MAINTAINED = Slot.value("maintenance", MAINTAINED);
  private static final Slot<Boolean> DOES_FOLLOW = Slot.value("following", FOLLOWS);

  static final List<Grammar> GRAMMARS =
      List.of(
          Grammar.of("stereopsis", "stereopsis present 60 arcsec")
              .sides(Grammar.Sides.PAIR)
              .startsWith("stereopsis")
              .slots(DEPTH, DISPARITY, STEREO_TEST)
              .whole(VisualFunctions.STEREOPSIS)
              .build(FunctionNotes::depth),
          Grammar.of("fixation", "fixation R central steady maintained")
              .sides(Grammar.Sides.EACH_OR_ASKED)
              .startsWith("fixation")
              .slots(IS_CENTRAL, IS_STEADY, IS_MAINTAINED, DOES_FOLLOW)
              .whole(VisualFunctions.FIXATION)
              .build(
                  eye ->
                      eye.found(
                          VisualFunctions.FIXATION,
                          new VisualFunctions.Fixation(
                              eye.find(IS_CENTRAL),
                              eye.find(IS_STEADY),
                              eye.find(IS_MAINTAINED),
                              eye.find(DOES_FOLLOW)))));

  static final List<Wording<?>> WORDINGS =
      List.of(
          Wording.of(
              VisualFunctions.STEREOPSIS,
              "stereopsis",
              seen ->
                  WrittenWords.join(
                      STEREO.phrase(seen.result()),
                      WrittenWords.maybe(seen.disparity(), Quantity::toString))),
          Wording.of(
              VisualFunctions.FIXATION,
              "fixation",
              seen ->
                  WrittenWords.join(
                      WrittenWords.maybe(seen.central(), CENTRAL::phrase),
                      WrittenWords.maybe(seen.steady(), STEADY::phrase),
                      WrittenWords.maybe(seen.maintained(), MAINTAINED::phrase),
                      WrittenWords.maybe(seen.follows(), FOLLOWS::phrase))));

  private FunctionNotes() {}

  private static PhraseTable<Boolean> either(String yes, String no) {
    return PhraseTable.<Boolean>empty().say(true, yes).say(false, no);
  }

  /** Reads an angle: 60 arcsec, 60", and the mark as two strokes. */
  private static Optional<Quantity> seconds(Cursor cursor) {
    return cursor
        .number()
        .filter(
            any -> cursor.takeAny("arcsec", "\"", "sec", "secs", "seconds") || twoStrokes(cursor))
        .map(number -> new Quantity(number, Unit.ARC_SECOND));
  }

  private static boolean twoStrokes(Cursor cursor) {
    return IntStream.range(0, 2).allMatch(stroke -> cursor.take("'"));
  }

  /** Adds the stereopsis; an angle that was seen says that there is some. */
  private static void depth(Eye eye) throws NotRead {
    Optional<Quantity> angle = eye.find(DISPARITY);
    Term depth =
        angle.isPresent()
            ? eye.find(DEPTH).orElse(WordLists.answer(STEREO, "present"))
            : eye.get(DEPTH);
    eye.found(VisualFunctions.STEREOPSIS, new VisualFunctions.Stereopsis(depth, angle));
    eye.remark(eye.find(STEREO_TEST).orElse(""));
  }
}
