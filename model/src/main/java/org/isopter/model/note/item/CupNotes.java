package org.isopter.model.note.item;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.finding.Finding;
import org.isopter.model.note.grammar.Eye;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Heading;
import org.isopter.model.note.grammar.Said;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Matcher;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.note.token.Token;

/** How wide the cup of a disc is. */
final class CupNotes {

  private static final PhraseTable<String> VERTICAL = ratio("v", "vert", "vertical");
  private static final PhraseTable<String> UNDIRECTED = ratio("undirected");
  private static final PhraseTable<String> PLAIN =
      PhraseTable.<String>empty().say("ratio", "CDR", "C/D", "cup-disc ratio", "C/D ratio");
  private static final PhraseTable<String> HORIZONTAL = ratio("h", "horiz", "horizontal");

  static final Slot<BigDecimal> UPRIGHT = Slot.value("vertical ratio", behind(VERTICAL));

  static final Slot<BigDecimal> ACROSS = Slot.value("horizontal ratio", behind(HORIZONTAL));

  static final Slot<BigDecimal> OF_NO_DIRECTION =
      Slot.value("ratio of no direction", behind(PLAIN).or(CupNotes::bare));

  /** What says a ratio among the rest of a disc. */
  static final List<Slot<BigDecimal>> RATIOS = List.of(UPRIGHT, ACROSS, OF_NO_DIRECTION);

  private static final Slot<BigDecimal> RATIO = Slot.value("ratio", CupNotes::ofOne);

  /** The same ratio in both directions; of two that differ it is not known which is which. */
  private static final Slot<BigDecimal> ROUND =
      Slot.value("ratio in both directions", CupNotes::round);

  static final List<Grammar> GRAMMARS =
      List.of(
          cup("vertical cup-disc ratio", "CDR v R 0.3 L 0.4", VERTICAL, Discs.VERTICAL_CUP),
          cup("horizontal cup-disc ratio", "CDR h R 0.3 L 0.4", HORIZONTAL, Discs.HORIZONTAL_CUP),
          cup(
              "cup-disc ratio of no direction",
              "CDR undirected R 0.3 L 0.4",
              UNDIRECTED,
              Discs.UNDIRECTED_CUP),
          Grammar.of("cup-disc ratio", "CDR R 0.3 L 0.4")
              .startsWith(PLAIN.words().stream().map(Heading::of))
              .slots(RATIO, ROUND)
              .method(DiscNotes.METHOD)
              .whole(Discs.UNDIRECTED_CUP)
              .build(CupNotes::plain));

  static final List<Wording<?>> WORDINGS =
      List.of(
          Wording.of(Discs.VERTICAL_CUP, "CDR v", BigDecimal::toPlainString),
          Wording.of(Discs.HORIZONTAL_CUP, "CDR h", BigDecimal::toPlainString),
          Wording.of(Discs.UNDIRECTED_CUP, "CDR undirected", BigDecimal::toPlainString));

  private CupNotes() {}

  /** Says whether a ratio is among what was said of a disc. */
  static boolean isIn(Said said) {
    return RATIOS.stream().anyMatch(said::has);
  }

  /** Adds the ratios that were said among the rest of a disc. */
  static void ratios(Eye eye) throws NotRead {
    add(eye, UPRIGHT, Discs.VERTICAL_CUP);
    add(eye, ACROSS, Discs.HORIZONTAL_CUP);
    add(eye, OF_NO_DIRECTION, Discs.UNDIRECTED_CUP);
  }

  private static PhraseTable<String> ratio(String... directions) {
    PhraseTable<String> words = PhraseTable.empty();
    for (String direction : directions) {
      for (String ratio : List.of("CDR", "C/D", "cup-disc ratio", "C/D ratio")) {
        words.say(direction, ratio + " " + direction, direction + " " + ratio);
      }
    }
    return words;
  }

  /** Reads a ratio without its name: of a disc, a number below one is nothing else. */
  private static Optional<BigDecimal> bare(Cursor cursor) {
    return cursor
        .number()
        .filter(ratio -> ratio.scale() > 0 && ratio.compareTo(BigDecimal.ONE) < 0)
        .filter(
            any -> cursor.atEnd() || cursor.sees(",") || cursor.token().kind() == Token.Kind.WORD)
        .filter(any -> !cursor.sees("mm") && !cursor.sees("pd") && !cursor.sees("dd"));
  }

  /** Reads a ratio, which may name the one that it is of: 0.3:1. */
  private static Optional<BigDecimal> ofOne(Cursor cursor) {
    Optional<BigDecimal> ratio = cursor.number();
    int end = cursor.place();
    boolean one = ratio.isPresent() && cursor.take(":") && cursor.isClose() && cursor.take("1");
    cursor.back(one ? cursor.place() : end);
    return ratio;
  }

  private static Matcher<BigDecimal> behind(PhraseTable<String> lead) {
    return cursor -> lead.read(cursor).flatMap(any -> ofOne(cursor));
  }

  private static Grammar cup(
      String name, String example, PhraseTable<String> starts, Finding<BigDecimal> finding) {
    return Grammar.of(name, example)
        .startsWith(starts.words().stream().map(Heading::of))
        .slots(RATIO)
        .method(DiscNotes.METHOD)
        .whole(finding)
        .build(eye -> eye.found(finding, eye.get(RATIO)));
  }

  /** Reads 0.3/0.3, and 0.3 round. */
  private static Optional<BigDecimal> round(Cursor cursor) {
    Optional<BigDecimal> one = cursor.number();
    Optional<BigDecimal> other =
        one.isPresent() && cursor.take("/") ? cursor.number() : Optional.empty();
    if (one.isPresent() && cursor.take("round")) {
      return one;
    }
    return one.filter(ratio -> other.filter(same -> same.compareTo(ratio) == 0).isPresent());
  }

  private static void plain(Eye eye) throws NotRead {
    if (eye.has(ROUND)) {
      add(eye, ROUND, Discs.VERTICAL_CUP);
      add(eye, ROUND, Discs.HORIZONTAL_CUP);
    } else {
      eye.found(Discs.UNDIRECTED_CUP, eye.get(RATIO));
    }
  }

  private static void add(Eye eye, Slot<BigDecimal> slot, Finding<BigDecimal> finding)
      throws NotRead {
    Optional<BigDecimal> ratio = eye.find(slot);
    if (ratio.isPresent()) {
      eye.found(finding, ratio.get());
    }
  }
}
