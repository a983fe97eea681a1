package org.isopter.model.note.item;

import java.util.List;
import org.isopter.model.answer.pupil.DilatingDrug;
import org.isopter.model.catalogue.Drops;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Heading;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.Vocabulary;
import org.isopter.model.note.token.Words;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/** Drops given to widen the pupil. */
final class DropNotes {

  private static final Vocabulary<DilatingDrug> DRUGS = Vocabulary.of(DilatingDrug.class);

  private static final Slot<DilatingDrug> DRUG = Slot.value("drug", DRUGS);

  private static final Slot<Quantity> STRENGTH =
      Slot.condition(
          "strength",
          cursor ->
              cursor
                  .number()
                  .filter(n -> cursor.take("%"))
                  .map(n -> new Quantity(n, Unit.PERCENT)));

  static final List<Grammar> GRAMMARS =
      List.of(
          Grammar.of("dilating drops", "tropicamide 1% OU @ 10:05")
              .sides(Grammar.Sides.EACH_OR_BOTH)
              .startsWith(DRUGS.words().stream().map(Heading::of).map(Heading::keptAsWord))
              .startsWith("drops")
              .slots(DRUG, STRENGTH)
              .whole(Drops.DILATION)
              .build(
                  eye ->
                      eye.found(
                          Drops.DILATION, new Drops.Dilation(eye.get(DRUG), eye.find(STRENGTH)))));

  static final List<Wording<?>> WORDINGS =
      List.of(
          Wording.of(Drops.DILATION, "drops", drop -> DRUGS.phrase(drop.drug()))
              .under(
                  drop ->
                      Words.maybe(drop.strength(), share -> share.value().toPlainString() + "%")));

  private DropNotes() {}
}
