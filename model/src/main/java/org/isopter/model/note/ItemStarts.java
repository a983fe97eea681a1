package org.isopter.model.note;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Denial;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Headings;
import org.isopter.model.note.grammar.ItemReader;
import org.isopter.model.note.grammar.Slot;
import org.isopter.model.note.item.Grammars;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
import org.isopter.model.value.Site;

/** How an item starts: with a heading of its own, or by going on with the item before. */
final class ItemStarts {

  /** What may stand between two numbers or behind them. */
  private static final Set<String> UNITS = Set.of("/", ",", ":", "=", "(", ")", "mmhg", "mm");

  private ItemStarts() {}

  /** A comma right behind a heading within a clause: it may belong before it, 6/9 ph, L 6/6. */
  static void requireBegun(int from, boolean heading, List<Token> rest) throws NotRead {
    if (from > 0 && heading && !rest.isEmpty() && rest.get(0).is(",")) {
      throw NotRead.word(rest.get(0));
    }
  }

  /**
   * Says whether an item that is no acuity is a heading and nothing but two numbers: {@code IOP
   * 14/16}. It says nothing of what stands before it without a mark between.
   *
   * @param end where the item ends
   */
  static boolean areTwoNumbers(Headings.Found found, List<Token> tokens, int end) {
    List<Token> rest = found.rest(tokens.subList(0, end), 0);
    return found.at() == 0
        && found.skipped() > 0
        && !Grammars.isOfAcuity(found.grammar())
        && rest.stream().filter(Token::isNumber).count() == 2
        && rest.stream().allMatch(token -> token.isNumber() || UNITS.contains(token.text()));
  }

  /**
   * Returns how many words are a heading, and its colon, before the heading of another item: {@code
   * pupils: no RAPD}, {@code discs: CDR R 0.3}. It says no more than where the other belongs.
   */
  static int label(Headings.Found found, List<Token> tokens, Headings headings) {
    if (found.at() > 0 || !WordFiles.is(WordRole.HEADING, tokens.get(0).text())) {
      return 0;
    }
    Cursor cursor = new Cursor(tokens, found.skipped());
    cursor.take(":");
    int place = cursor.place();
    boolean mine =
        found.grammar().slots().stream()
            .anyMatch(slot -> new Cursor(tokens, place).attempt(slot.matcher()).isPresent());
    boolean label =
        headings
            .runningOn(tokens, place)
            .filter(next -> !next.grammar().equals(found.grammar()) && isOfOther(found, next))
            .filter(next -> next.at() == place || startsWithItsOwn(next, tokens, place))
            .isPresent();
    return label && !mine ? place : 0;
  }

  /** Acuities are told apart by their headings: VA near is no label before near. */
  private static boolean isOfOther(Headings.Found found, Headings.Found next) {
    return !Grammars.isOfAcuity(found.grammar()) && !Grammars.isOfAcuity(next.grammar());
  }

  /** Says whether a "no", both eyes, or the eye of a defect that compares them stands before it. */
  private static boolean startsWithItsOwn(Headings.Found next, List<Token> tokens, int place) {
    return Denial.isNo(tokens.get(place))
        || Common.side(tokens.get(place)).equals(Optional.of(Site.BOTH))
        || next.grammar().sides() == Grammar.Sides.NAMED;
  }

  /** Says whether an item starts with an eye and its correction, and names no test: L cc 6/12. */
  static boolean isCorrectionOfEye(Headings.Found found) {
    return found.heading().kept() && found.at() > 0 && found.grammar().equals(Grammars.DISTANCE);
  }

  /** A side goes on with the item before, and so does a condition with sides behind it. */
  static boolean goesOn(ItemReader.Start before, List<Token> tokens, int from) {
    boolean print = Grammars.startsWithPrint(tokens) && !before.grammar().equals(Grammars.DISTANCE);
    boolean snellen = from == 0 && Grammars.startsWithSnellen(tokens, before.grammar());
    // A "no" may deny what follows it, which is not of this item.
    boolean denies = Denial.isNo(tokens.get(0));
    return Common.namesSide(tokens)
        && !denies
        && !print
        && !snellen
        && (from == 0 || startsWithCondition(before, tokens));
  }

  private static boolean startsWithCondition(ItemReader.Start before, List<Token> tokens) {
    Cursor cursor = new Cursor(tokens, 0);
    return before.grammar().slots().stream()
        .filter(Slot::isCondition)
        .anyMatch(slot -> cursor.attempt(slot.matcher()).isPresent());
  }

  /**
   * Says whether a dash before a clause is only that of a list: what starts behind it is a "no", or
   * a heading that does not say by itself that something is there.
   */
  static boolean isClearBehindDash(Headings headings, List<Token> clause) {
    List<Token> rest = clause.subList(1, clause.size());
    boolean denies = !rest.isEmpty() && Denial.isNo(rest.get(0));
    return denies
        || headings
            .certain(rest, 0)
            .filter(found -> !found.heading().kept())
            .filter(found -> found.end() < rest.size())
            .isPresent();
  }

  /** Says whether words end with one of the two eyes: lids R ptosis L. */
  static boolean endsWithEye(List<Token> words) {
    int last = words.size() - 1;
    while (last > 0 && words.get(last).kind() == Token.Kind.MARK) {
      last--;
    }
    return Common.side(words.get(last)).filter(Site.EACH_EYE::contains).isPresent();
  }
}
