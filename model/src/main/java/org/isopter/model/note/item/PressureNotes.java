package org.isopter.model.note.item;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.tissue.Tonometry;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.note.grammar.Eye;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.grammar.WordLists;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.note.token.Token;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Term;
import org.isopter.model.value.Unit;

/** The pressure in the eye. */
final class PressureNotes {

  private static final Slot<Tonometry> METHOD =
      Slot.condition(
          "technique",
          PhraseTable.of(Tonometry.class)
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

  /** No tonometer's scale ends below this (common practice, no source). */
  private static final BigDecimal LOWEST_END = BigDecimal.valueOf(50);

  private static final PhraseTable<Term> SIDES = sides();

  /** A pressure that the instrument could not show: over 60. */
  private static final Slot<Pressures.Beyond> BEYOND =
      Slot.value("pressure beyond the scale", PressureNotes::beyond);

  static final List<Grammar> GRAMMARS =
      List.of(
          Grammar.of("intraocular pressure", "IOP R 14 L 16 GAT")
              .startsWith("IOP", "intraocular pressure")
              .slots(PRESSURE, BEYOND)
              .method(METHOD)
              .whole(Pressures.INTRAOCULAR)
              .build(PressureNotes::measured),
          Grammar.of("pressure beyond the scale", "IOP beyond scale R above 60")
              .startsWith("IOP beyond scale")
              .slots(BEYOND)
              .method(METHOD)
              .whole(Pressures.BEYOND)
              .build(eye -> eye.found(Pressures.BEYOND, eye.get(BEYOND))));

  static final List<Wording<?>> WORDINGS =
      List.of(
          Wording.of(
              Pressures.INTRAOCULAR,
              "IOP",
              pressure ->
                  pressure.value().toPlainString() + (isSmall(pressure.value()) ? " mmHg" : "")),
          Wording.of(
              Pressures.BEYOND,
              "IOP beyond scale",
              beyond ->
                  SIDES.phrase(beyond.beyond()) + " " + beyond.limit().value().toPlainString()));

  private PressureNotes() {}

  /** Says whether nothing but a pressure in an eye has this unit: R 14 mmHg; not 120/80 mmHg. */
  static boolean isPressure(List<Token> item) {
    return item.stream().anyMatch(token -> token.is("mmhg"))
        && item.stream().noneMatch(token -> token.is("/"));
  }

  private static PhraseTable<Term> sides() {
    PhraseTable<Term> words = WordLists.vocabulary(Pressures.BEYOND, "beyond-limit", word -> word);
    WordLists.also(words, "above", ">", "over", "more than");
    return WordLists.also(words, "below", "<", "under", "less than");
  }

  private static Optional<Pressures.Beyond> beyond(Cursor cursor) {
    Optional<Term> side = SIDES.read(cursor);
    Optional<BigDecimal> limit = side.flatMap(any -> cursor.number());
    cursor.take("mmhg");
    return limit.flatMap(
        number -> side.map(where -> new Pressures.Beyond(new Quantity(number, Unit.MM_HG), where)));
  }

  private static void measured(Eye eye) throws NotRead {
    if (!eye.has(BEYOND)) {
      eye.found(Pressures.INTRAOCULAR, eye.get(PRESSURE));
      return;
    }
    if (eye.has(PRESSURE)) {
      throw NotRead.because("it is a pressure that was read, or one beyond the scale");
    }
    Pressures.Beyond beyond = eye.get(BEYOND);
    boolean endOfScale = beyond.limit().value().compareTo(LOWEST_END) >= 0;
    if (!endOfScale || !SIDES.phrase(beyond.beyond()).equals("above")) {
      throw NotRead.because("it is not said whether this is the end of the scale")
          .write("IOP beyond scale R above 30");
    }
    eye.found(Pressures.BEYOND, beyond);
  }

  /**
   * Reads a pressure; a dash behind its side is no sign: R-14, R - 14. Less than one millimetre
   * needs its unit: behind a pressure it may be a cup-disc ratio that lost its heading.
   */
  private static Optional<Quantity> pressure(Cursor cursor) {
    cursor.take("-");
    Optional<BigDecimal> number = cursor.number();
    boolean unit = cursor.takeAny("mmhg", "mm");
    return number
        .filter(value -> unit || !isSmall(value))
        .map(value -> new Quantity(value, Unit.MM_HG));
  }

  private static boolean isSmall(BigDecimal value) {
    return value.signum() > 0 && value.compareTo(BigDecimal.ONE) < 0;
  }
}
