package org.isopter.model.note.item;

import java.util.List;
import java.util.Optional;
import org.isopter.model.catalogue.Corneas;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/** The thickness of the cornea. */
final class CorneaNotes {

  // Micrometres may go unsaid: this thickness has no other unit (common practice, no source).
  private static final Slot<Quantity> THICKNESS =
      Slot.value("thickness in micrometres", CorneaNotes::micrometres);

  static final List<Grammar> GRAMMARS =
      List.of(
          Grammar.of("thickness of the cornea", "CCT R 540 L 538")
              .startsWith("CCT", "pachymetry", "pachy", "central corneal thickness")
              .slots(THICKNESS)
              .whole(Corneas.THICKNESS)
              .build(eye -> eye.found(Corneas.THICKNESS, eye.get(THICKNESS))));

  static final List<Wording<?>> WORDINGS =
      List.of(Wording.of(Corneas.THICKNESS, "CCT", thickness -> thickness.value().toPlainString()));

  private CorneaNotes() {}

  private static Optional<Quantity> micrometres(Cursor cursor) {
    return cursor
        .whole()
        .filter(number -> number >= 100)
        .map(
            number -> {
              cursor.takeAny("um", "\u00b5m", "\u03bcm", "microns", "micrometres", "micrometers");
              return Quantity.of(String.valueOf(number), Unit.MICROMETRE);
            });
  }
}
