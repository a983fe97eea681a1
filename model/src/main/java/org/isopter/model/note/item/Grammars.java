package org.isopter.model.note.item;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.Globes;
import org.isopter.model.finding.Finding;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Heading;
import org.isopter.model.note.grammar.ItemReader;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Matcher;
import org.isopter.model.note.token.Token;

/** The table of the items that are understood. */
public final class Grammars {

  public static final List<Grammar> ALL =
      Stream.of(
              AcuityNotes.GRAMMARS,
              PupilNotes.GRAMMARS,
              AfferentNotes.GRAMMARS,
              ColourNotes.GRAMMARS,
              FieldNotes.GRAMMARS,
              DiscNotes.GRAMMARS,
              SignItems.OF_DISC,
              CupNotes.GRAMMARS,
              LidNotes.GRAMMARS,
              PressureNotes.GRAMMARS,
              RefractionNotes.GRAMMARS,
              MovementNotes.GRAMMARS,
              AlignmentNotes.GRAMMARS,
              SegmentNotes.GRAMMARS,
              DropNotes.GRAMMARS,
              CorneaNotes.GRAMMARS,
              HalfFieldNotes.GRAMMARS,
              FurtherNotes.GRAMMARS,
              FunctionNotes.GRAMMARS,
              TestNotes.GRAMMARS)
          .flatMap(List::stream)
          .toList();

  /** An item without a heading: an acuity whose notation leaves no doubt. */
  public static final ItemReader.Start BARE =
      ItemReader.Start.of(AcuityNotes.EVIDENT, Heading.of("VA"));

  /** The grammar of acuity at distance. */
  public static final Grammar DISTANCE = AcuityNotes.DISTANCE;

  /** An acuity in tenths without a heading. */
  public static final ItemReader.Start IN_TENTHS =
      ItemReader.Start.of(AcuityNotes.DISTANCE, Heading.of("VA"));

  /** A refraction without a heading: a side, and a power with its sign. */
  private static final ItemReader.Start BARE_LENS =
      ItemReader.Start.of(RefractionNotes.BARE, Heading.of("refraction"));

  /** A pressure without a heading: a side, and a number with its unit. */
  private static final ItemReader.Start BARE_PRESSURE =
      ItemReader.Start.of(PressureNotes.GRAMMARS.get(0), Heading.of("IOP"));

  /** Says whether an item starts with print of a near card, which needs no heading: N5. */
  public static boolean startsWithPrint(List<Token> item) {
    return new Cursor(item, 0).attempt(AcuityWords.PRINT).isPresent();
  }

  /** Says whether a line of a chart stands among the words of an item, or a number corrected. */
  public static boolean holdsAcuity(List<Token> item) {
    return holds(item, cursor -> AcuityWords.EVIDENT.read(cursor).filter(Grammars::isOfChart))
        || (holds(item, AcuityWords.CORRECTIONS)
            && Common.namesSide(item)
            && item.stream().anyMatch(Token::isNumber));
  }

  private static boolean isOfChart(AcuityWords.Seen seen) {
    return !AcuityWords.isLow(seen);
  }

  private static <T> boolean holds(List<Token> item, Matcher<T> words) {
    return IntStream.range(0, item.size())
        .anyMatch(at -> new Cursor(item, at).attempt(words).isPresent());
  }

  /** Says whether an eye and a Snellen fraction start an item that is not of plates: L 6/9. */
  public static boolean startsWithSnellen(List<Token> item, Grammar before) {
    Cursor cursor = new Cursor(item, 0);
    boolean side = cursor.attempt(Common.SIDES).isPresent();
    cursor.takeAny(":", "=");
    return side
        && (cursor.sees("6") || cursor.sees("20"))
        && cursor.anyNumber().isPresent()
        && cursor.take("/")
        && !AcuityNotes.GRAMMARS.contains(before)
        && !ColourNotes.GRAMMARS.contains(before);
  }

  /** Returns how an item without a heading is read. */
  public static ItemReader.Start bare(List<Token> item) {
    return RefractionNotes.isLens(item)
        ? BARE_LENS
        : PressureNotes.isPressure(item) ? BARE_PRESSURE : BARE;
  }

  /** Says whether an item without a heading is a refraction: an eye, and a power with its sign. */
  public static boolean isLens(List<Token> item) {
    return RefractionNotes.isLens(item);
  }

  /** Says whether an item without a heading is an acuity in tenths. */
  public static boolean isInTenths(List<Token> item) {
    return AcuityWords.isInTenths(item);
  }

  /** Returns an item with the word that says how it counts before its eye: L: VA HM, R: 1,0. */
  public static List<Token> countedFirst(List<Token> item) {
    int at = 1;
    while (at < item.size() && item.get(at).is(":")) {
      at++;
    }
    boolean behind =
        at < item.size() && item.get(at).is("tenths") && Common.side(item.get(0)).isPresent();
    if (!behind) {
      return item;
    }
    List<Token> moved = new ArrayList<>(item);
    moved.add(0, moved.remove(at));
    return moved;
  }

  /** Returns an acuity without a heading with the word before it that says how it counts. */
  public static List<Token> counted(List<Token> item) {
    Token tenths = Token.unwritten("tenths", item.get(0));
    return Stream.concat(Stream.of(tenths), item.stream()).toList();
  }

  /** How each finding is written. */
  public static final List<Wording<?>> WORDINGS =
      Stream.of(
              AcuityNotes.WORDINGS,
              PupilNotes.WORDINGS,
              AfferentNotes.WORDINGS,
              ColourNotes.WORDINGS,
              FieldNotes.WORDINGS,
              CupNotes.WORDINGS,
              DiscNotes.WORDINGS,
              LidNotes.WORDINGS,
              PressureNotes.WORDINGS,
              RefractionNotes.WORDINGS,
              MovementNotes.WORDINGS,
              AlignmentNotes.WORDINGS,
              SegmentNotes.WORDINGS,
              DropNotes.WORDINGS,
              CorneaNotes.WORDINGS,
              FurtherNotes.WORDINGS,
              FunctionNotes.WORDINGS,
              TestNotes.WORDINGS)
          .<Wording<?>>flatMap(List::stream)
          .toList();

  /** What is seen in an eye and has a grammar beside others. */
  private static final Set<Finding<?>> SEEN =
      Set.of(Globes.FUNDUS_VIEW, Globes.RED_REFLEX, Discs.SIGN);

  private Grammars() {}

  /** Says whether a grammar reads acuities: at distance, through a pinhole, near. */
  public static boolean isOfAcuity(Grammar grammar) {
    return AcuityNotes.GRAMMARS.contains(grammar);
  }

  /** Says whether a grammar reads what is seen in or at an eye on looking into it. */
  public static boolean isSeenInEye(Grammar grammar) {
    return Stream.of(
                DiscNotes.GRAMMARS,
                SignItems.OF_DISC,
                CupNotes.GRAMMARS,
                SegmentNotes.GRAMMARS,
                LidNotes.GRAMMARS,
                PupilNotes.GRAMMARS)
            .anyMatch(of -> of.contains(grammar))
        || grammar.whole().stream().anyMatch(SEEN::contains);
  }
}
