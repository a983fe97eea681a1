package org.isopter.model.note.item;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.tissue.Tonometry;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Vocabulary;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/** The pressure in the eye. */
final class PressureNotes {

  private static final Slot<Tonometry> METHOD =
      Slot.condition(
          "technique",
          Vocabulary.of(Tonometry.class)
              .say(Tonometry.GOLDMANN, "GAT", "goldmann tonometry", "goldmann tonometer")
              .say(Tonometry.PERKINS, "perkins tonometry", "perkins tonometer")
              .say(Tonometry.APPLANATION, "applanation tonometry", "applanation tonometer")
              .say(Tonometry.NON_CONTACT, "NCT", "air puff", "non-contact tonometer")
              .say(Tonometry.REBOUND, "rebound tonometry", "rebound tonometer")
              .say(Tonometry.INDENTATION, "schiotz", "indentation tonometer")
              .say(Tonometry.PALPATION, "digital palpation", "by palpation")
              .say(Tonometry.OTHER, "other tonometer", "other tonometry"));

  // Millimetres of mercury may go unsaid: shorthand has no other unit for this pressure (common
  // practice, no source).
  private static final Slot<Quantity> PRESSURE = Slot.value("pressure", PressureNotes::pressure);

  static final List<Grammar> GRAMMARS =
      List.of(
          Grammar.of("intraocular pressure", "IOP R 14 L 16 GAT")
              .startsWith("IOP", "intraocular pressure")
              .slots(PRESSURE)
              .method(METHOD)
              .whole(Pressures.INTRAOCULAR)
              .build(eye -> eye.found(Pressures.INTRAOCULAR, eye.get(PRESSURE))));

  static final List<Wording<?>> WORDINGS =
      List.of(
          Wording.of(Pressures.INTRAOCULAR, "IOP", pressure -> pressure.value().toPlainString()));

  private PressureNotes() {}

  /** Reads a pressure; a dash close behind its side is no sign: R-14. */
  private static Optional<Quantity> pressure(Cursor cursor) {
    if (cursor.isClose()) {
      cursor.take("-");
    }
    Optional<BigDecimal> number = cursor.number();
    cursor.take("mmhg");
    return number.map(value -> new Quantity(value, Unit.MM_HG));
  }
}
