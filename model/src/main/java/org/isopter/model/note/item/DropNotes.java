package org.isopter.model.note.item;

import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.pupil.DilatingDrug;
import org.isopter.model.catalogue.Drops;
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
import org.isopter.model.value.Unit;

/** Drops given to widen the pupil. */
final class DropNotes {

  private static final PhraseTable<DilatingDrug> DRUGS = PhraseTable.of(DilatingDrug.class);

  private record Drop(DilatingDrug drug, Optional<Quantity> strength) {}

  private static final Slot<Drop> DROP = Slot.values("drug", DropNotes::drop);

  private static final Slot<Quantity> STRENGTH = Slot.condition("strength", DropNotes::strength);

  static final List<Grammar> GRAMMARS =
      List.of(
          Grammar.of("dilating drops", "tropicamide 1% OU @ 10:05")
              .sides(Grammar.Sides.EACH_OR_BOTH)
              .startsWith(
                  DRUGS.words().stream()
                      .map(Heading::of)
                      .map(Heading::keptAsWord)
                      .map(Heading::afterWords))
              .startsWith("drops")
              .slots(DROP, STRENGTH)
              .whole(Drops.DILATION)
              .build(DropNotes::dilated));

  static final List<Wording<?>> WORDINGS =
      List.of(
          Wording.of(Drops.DILATION, "drops", drop -> DRUGS.phrase(drop.drug()))
              .under(
                  drop ->
                      WrittenWords.maybe(
                          drop.strength(), share -> share.value().toPlainString() + "%")));

  private DropNotes() {}

  private static void dilated(Eye eye) throws NotRead {
    List<Drop> drops = eye.all(DROP);
    Optional<Quantity> strength = eye.find(STRENGTH);
    if (drops.isEmpty()) {
      eye.get(DROP);
    }
    if (strength.isPresent() && (drops.size() > 1 || drops.get(0).strength().isPresent())) {
      throw NotRead.because("it is not said which drug has this strength");
    }
    for (Drop drop : drops) {
      eye.found(
          Drops.DILATION, new Drops.Dilation(drop.drug(), drop.strength().or(() -> strength)));
    }
  }

  /** Reads a drug and its strength, the strength before or behind: 1% tropicamide. */
  private static Optional<Drop> drop(Cursor cursor) {
    Optional<Quantity> before = cursor.attempt(DropNotes::strength);
    return DRUGS
        .read(cursor)
        .map(drug -> new Drop(drug, before.or(() -> cursor.attempt(DropNotes::strength))));
  }

  private static Optional<Quantity> strength(Cursor cursor) {
    return cursor.number().filter(n -> cursor.take("%")).map(n -> new Quantity(n, Unit.PERCENT));
  }
}
