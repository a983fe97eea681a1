package org.isopter.model.note.item;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.Sweating;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Lids;
import org.isopter.model.finding.Finding;
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

/** The lids, and sweating of the face. */
final class LidNotes {

  private static final Slot<Quantity> LENGTH = Slot.value("length in mm", LidNotes::by);

  // Millimetres may go unsaid: these lengths have no other unit (common practice, no source).
  private static final Slot<Quantity> BARE_LENGTH =
      Slot.value("length in mm", Common.BARE_MILLIMETRES);

  private static final Slot<Presence> PRESENCE =
      Slot.value(
          "presence",
          PhraseTable.of(Presence.class)
              .say(Presence.PRESENT, "yes", "+", "+ve")
              .say(Presence.ABSENT, "no", "none", "nil"));

  private static final PhraseTable<Sweating> AMOUNTS =
      PhraseTable.of(Sweating.class)
          .say(Sweating.ABSENT, "anhidrosis")
          .say(Sweating.REDUCED, "hypohidrosis");

  private static final Slot<Sweating> SWEATING = Slot.value("sweating", AMOUNTS);

  static final List<Grammar> GRAMMARS =
      List.of(
          length(Lids.MARGIN_REFLEX, "MRD1 R 4 mm L 2 mm", "MRD1", "margin reflex distance 1"),
          length(Lids.FISSURE, "fissure R 10 mm L 8 mm", "fissure", "palpebral fissure", "PF"),
          length(Lids.LEVATOR, "levator R 15 mm L 9 mm", "levator", "levator function", "LF"),
          Grammar.of("ptosis", "ptosis L 2 mm")
              .startsWith(Stream.of(Heading.of("ptosis").afterWords()))
              .slots(PRESENCE, LENGTH, Common.DEGREE)
              .whole(Lids.PTOSIS)
              .unsided((said, heading) -> said.find(PRESENCE).equals(Optional.of(Presence.ABSENT)))
              .build(LidNotes::ptosis),
          Grammar.of("sweating of the face", "sweating R absent L normal")
              .startsWith("sweating", "facial sweating")
              .startsWith(
                  Stream.of("anhidrosis", "hypohidrosis").map(Heading::of).map(Heading::keptAsWord))
              .slots(SWEATING)
              .whole(Lids.SWEATING)
              .build(eye -> eye.found(Lids.SWEATING, eye.get(SWEATING))));

  static final List<Wording<?>> WORDINGS =
      List.of(
          Wording.of(Lids.MARGIN_REFLEX, "MRD1", Quantity::toString),
          Wording.of(Lids.FISSURE, "fissure", Quantity::toString),
          Wording.of(Lids.LEVATOR, "levator", Quantity::toString),
          Wording.of(Lids.PTOSIS, "ptosis", LidNotes::words),
          Wording.of(Lids.SWEATING, "sweating", WrittenWords::of));

  private LidNotes() {}

  private static Grammar length(Finding<Quantity> finding, String example, String... headings) {
    return Grammar.of(finding.title(), example)
        .startsWith(headings)
        .slots(BARE_LENGTH)
        .whole(finding)
        .build(eye -> eye.found(finding, eye.get(BARE_LENGTH)));
  }

  /** Reads how far a lid hangs: 2 mm, by 2 mm, of 2 mm. */
  private static Optional<Quantity> by(Cursor cursor) {
    cursor.takeAny("by", "of");
    return Common.MILLIMETRES.read(cursor);
  }

  /** Adds the ptosis: naming it beside an eye says that it is there. */
  private static void ptosis(Eye eye) throws NotRead {
    Presence presence = eye.find(PRESENCE).orElse(Presence.PRESENT);
    eye.found(Lids.PTOSIS, new Lids.Ptosis(presence, eye.find(LENGTH)));
    eye.degree(presence == Presence.PRESENT);
  }

  private static String words(Lids.Ptosis ptosis) {
    return WrittenWords.join(
        WrittenWords.of(ptosis.presence()),
        WrittenWords.maybe(ptosis.amount(), Quantity::toString));
  }
}
