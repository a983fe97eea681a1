package org.isopter.model.note.item;

import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.sight.ColourTest;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Eye;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Heading;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.note.token.WrittenWords;
import org.isopter.model.value.Quantity;

/** Colour plates, and the redness of a red target. */
final class ColourNotes {

  private record Score(int correct, int shown) {}

  private static final PhraseTable<ColourTest> TESTS =
      PhraseTable.of(ColourTest.class).say(ColourTest.HARDY_RAND_RITTLER, "HRR");

  private static final Slot<ColourTest> TEST = Slot.condition("set of plates", TESTS);

  private static final Slot<Score> SCORE = Slot.value("score", ColourNotes::score);

  private static final Slot<Integer> EDITION = Slot.condition("edition", ColourNotes::edition);

  /** Whether the plate that everybody reads was read. */
  private static final PhraseTable<Boolean> CONTROLS =
      PhraseTable.<Boolean>empty()
          .say(true, "test plate read", "test plate seen")
          .say(false, "test plate missed", "test plate not read", "test plate not seen");

  private static final Slot<Boolean> CONTROL = Slot.value("control plate", CONTROLS);

  private static final Slot<Quantity> SATURATION = Slot.value("red saturation", Common::share);

  static final List<Grammar> GRAMMARS =
      List.of(
          Grammar.of("colour plates", "ishihara R 13/15 L 12/15 (24)")
              .sides(Grammar.Sides.EACH_OR_ASKED)
              .startsWith(TESTS.words().stream().map(Heading::of).map(Heading::keptAsWord))
              .startsWith("colour plates", "color plates")
              .slots(TEST, SCORE, CONTROL, EDITION)
              .whole(Colours.PLATES)
              .build(ColourNotes::plates),
          Grammar.of("red saturation", "red sat R 70% L 100%")
              .startsWith("red sat", "red saturation")
              .slots(SATURATION)
              .whole(Colours.RED_SATURATION)
              .build(eye -> eye.found(Colours.RED_SATURATION, eye.get(SATURATION))),
          Grammar.of("red desaturation", "red sat R 100% L 60%")
              .startsWith("red desat", "red desaturation")
              .slots(SATURATION, Common.DEGREE)
              .whole(Colours.RED_SATURATION)
              .build(
                  eye -> {
                    throw NotRead.because(
                        "the record holds how red it seems to this eye, in percent");
                  }));

  static final List<Wording<?>> WORDINGS =
      List.of(
          Wording.of(Colours.PLATES, "colour plates", ColourNotes::value)
              .under(ColourNotes::conditions),
          Wording.of(
              Colours.RED_SATURATION, "red sat", share -> share.value().toPlainString() + "%"));

  private ColourNotes() {}

  private static Optional<Score> score(Cursor cursor) {
    return cursor
        .whole()
        .filter(correct -> cursor.takeAny("/", "of"))
        .flatMap(correct -> cursor.whole().map(shown -> new Score(correct, shown)));
  }

  /** Reads (24), 24 plates, or edition 24. */
  private static Optional<Integer> edition(Cursor cursor) {
    boolean bracket = cursor.take("(");
    boolean word = cursor.take("edition");
    Optional<Integer> plates = cursor.whole();
    boolean unit = cursor.takeAny("plates", "plate");
    boolean closed = !bracket || cursor.take(")");
    return plates.filter(any -> closed && (bracket || word || unit));
  }

  private static void plates(Eye eye) throws NotRead {
    Score score = eye.get(SCORE);
    eye.found(
        Colours.PLATES,
        new Colours.Plates(
            score.correct(), score.shown(), eye.get(TEST), eye.find(EDITION), eye.find(CONTROL)));
  }

  private static String conditions(Colours.Plates plates) {
    return WrittenWords.join(
        WrittenWords.of(plates.test()),
        WrittenWords.maybe(plates.edition(), count -> "edition " + count));
  }

  private static String value(Colours.Plates plates) {
    return WrittenWords.join(
        plates.correct() + "/" + plates.shown(),
        WrittenWords.maybe(plates.control(), CONTROLS::phrase));
  }
}
