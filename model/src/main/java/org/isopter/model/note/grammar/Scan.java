package org.isopter.model.note.grammar;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;
import org.isopter.model.value.Site;

/** Sorts the tokens of an item into what is said before any side, and what of each side. */
final class Scan {

  /**
   * What was said behind a side.
   *
   * @param side the side; none where the item may stand without
   * @param at where it is named
   * @param said what was said
   */
  record Group(Optional<Site> side, Token at, Said said) {}

  private static final String OF_EITHER =
      "it may name the eye of what is before it or of what follows";

  private final Grammar grammar;
  private final boolean plural;
  private final Headings headings;
  private final List<Token> tokens;
  private final Cursor cursor;
  private final Joints joints;
  private final Said head = new Said();
  private final List<Group> groups = new ArrayList<>();
  private final List<Token> commas = new ArrayList<>();
  private boolean afterComma;
  private boolean denied;
  private Last last = Last.HEADING;

  /** What stands before the cursor. */
  private enum Last {
    HEADING,
    SIDE,
    CONDITION,
    VALUE,
    OTHER
  }

  private Scan(Grammar grammar, boolean plural, Headings headings, List<Token> tokens) {
    this.grammar = grammar;
    this.plural = plural;
    this.headings = headings;
    this.tokens = tokens;
    this.cursor = new Cursor(tokens, 0);
    this.joints = new Joints(tokens, cursor);
  }

  static Scan of(ItemReader.Start start, Headings headings, List<Token> tokens) throws NotRead {
    Scan scan = new Scan(start.grammar(), start.heading().plural(), headings, tokens);
    scan.run();
    return scan;
  }

  Said head() {
    return head;
  }

  List<Group> groups() {
    return groups;
  }

  /** Returns the commas between what was read. */
  List<Token> commas() {
    return commas;
  }

  /** Returns the eyes as commas part them; empty where they do not. */
  Optional<CommaParts> parts(Said conditions) throws NotRead {
    return CommaParts.of(conditions, groups, commas);
  }

  /**
   * Says whether nothing stands behind a colon: a field of a form that was not filled in.
   *
   * @param first where the item starts; a side there and its colon stand before the heading
   */
  boolean isLeftOpen(Token first) {
    int end = cursor.place();
    boolean colon = end > 0 && (tokens.get(end - 1).is(":") || tokens.get(end - 1).is("="));
    boolean label =
        end == 2 && tokens.get(0).equals(first) && tokens.get(1).start() - tokens.get(0).end() <= 1;
    return colon && !label;
  }

  /** Returns the number of tokens read: up to the comma before the next item, or all. */
  int length() {
    return cursor.place();
  }

  private void run() throws NotRead {
    while (!cursor.atEnd()) {
      if ((cursor.sees(",") && endsAtComma())
          || endsAtConnector()
          || deniesNext()
          || changesCondition()
          || runsIntoNext()) {
        return;
      }
      step();
    }
  }

  private void step() throws NotRead {
    Token here = cursor.token();
    if (cursor.take(",")) {
      afterComma = true;
      commas.add(here);
      return;
    }
    if (cursor.takeAny(")") || (!slotReads() && cursor.takeAny("("))) {
      return;
    }
    if (!takeHeading() && !takeSlot() && !takeSide(here) && !takePause()) {
      throw NotRead.word(here);
    }
  }

  /** Says whether what follows the comma is an item of its own rather than a word of this one. */
  private boolean endsAtComma() {
    int comma = cursor.place();
    cursor.take(",");
    if (cursor.sees(NotRead.NO_PLACE)) {
      cursor.back(comma);
      return true;
    }
    boolean sidesBehind = last == Last.SIDE && head.hasValues() && !endsWithCondition();
    int end = sidesBehind ? comma : longest().map(this::end).orElse(comma);
    cursor.back(comma);
    int mine = namesAgain(end) ? comma : end;
    return headings
        .at(tokens, comma + 1)
        .filter(
            next ->
                mine == comma
                    || (isMine(next) ? startsAnew(next) : next.end() > mine || ofBothEyes(next)))
        .isPresent();
  }

  /** Says whether both eyes have their own and one is named at a place: 6/9 R 6/6 L, ph 6/5 L. */
  private boolean namesAgain(int at) {
    int here = cursor.place();
    cursor.back(at);
    Optional<Site> side = cursor.atEnd() ? Optional.empty() : cursor.attempt(Common.SIDES);
    cursor.back(here);
    return groups.size() > 1
        && side.isPresent()
        && groups.stream().anyMatch(group -> group.side().equals(side));
  }

  /** Says whether a direction with an eye that has its own starts: abd R -2, add R -1. */
  private boolean startsAnew(Headings.Found next) {
    int here = cursor.place();
    cursor.back(next.end());
    Optional<Site> side = cursor.attempt(Common.SIDES);
    cursor.back(here);
    return next.heading().kept()
        && side.isPresent()
        && groups.stream().anyMatch(group -> group.side().equals(side) && group.said().hasValues());
  }

  /** Says whether both eyes have what they need: discs pink, C/D 0.3 both. */
  private boolean ofBothEyes(Headings.Found next) {
    return plural
        && groups.isEmpty()
        && head.hasValues()
        && grammar.unsided().test(head, grammar.headings().get(0).ofBothEyes())
        && next.grammar().whole().size() == 1
        && joints.namesSideBehind(next.end());
  }

  /** Says whether nothing but a condition follows: 20/30 OD, 20/40 OS, uncorrected. */
  private boolean endsWithCondition() {
    return longest().filter(Slot::isCondition).filter(slot -> nothingMore(end(slot))).isPresent();
  }

  /** Says whether the item ends at a place: nothing follows, or a comma and another item. */
  private boolean nothingMore(int at) {
    return at == tokens.size()
        || (tokens.get(at).is(",")
            && headings.certain(tokens, at + 1).filter(next -> !isMine(next)).isPresent());
  }

  /** Says whether a condition of all eyes is said anew: bright R 3 L 2, dim R 6 L 4. */
  private boolean changesCondition() {
    boolean anew = groups.size() > 1 && groups.stream().allMatch(group -> group.said().hasValues());
    Optional<Slot<?>> next = anew ? longest() : Optional.empty();
    if (next.isEmpty() || !next.get().isCondition() || !head.has(next.get())) {
      return false;
    }
    int here = cursor.place();
    cursor.back(end(next.get()));
    boolean side = !cursor.atEnd() && namesSide(cursor.place());
    cursor.back(here);
    return side;
  }

  /** Says whether a word that joins stands before an item of its own: full with no diplopia. */
  private boolean endsAtConnector() {
    int here = cursor.place();
    boolean said = head.hasValues() || groups.stream().anyMatch(group -> group.said().hasValues());
    if (!said || !Common.isConnector(cursor.token()) || slotReads()) {
      return false;
    }
    cursor.back(here + 1);
    if (cursor.sees(NotRead.NO_PLACE)) {
      cursor.back(here);
      return true;
    }
    int mine = cursor.atEnd() ? here : longest().map(this::end).orElse(here);
    cursor.back(here);
    return headings
        .runningOn(tokens, here + 1)
        .filter(next -> mine == here || (!isMine(next) && next.end() > mine))
        .isPresent();
  }

  /**
   * Says whether the next item starts here without a mark between: a heading that no slot reads, or
   * a "no" and a heading. A side before the heading belongs to it unless a value waits for its
   * side.
   */
  private boolean runsIntoNext() throws NotRead {
    boolean said = head.hasValues() || groups.stream().anyMatch(group -> group.said().hasValues());
    if (!said) {
      return false;
    }
    int here = cursor.place();
    int mine = longest().map(this::end).orElse(here);
    Optional<Headings.Found> next =
        headings
            .runningOn(tokens, here)
            .filter(found -> isOther(found, here) && (mine == here || found.end() > mine))
            .filter(found -> !readsOver(found));
    boolean sideBetween = next.filter(found -> found.at() > here).isPresent() && namesSide(here);
    if (sideBetween && head.hasValues() && groups.isEmpty()) {
      throw NotRead.at(cursor.token(), OF_EITHER);
    }
    return next.isPresent() && !(sideBetween && waitsForSide());
  }

  /** A heading of this item said again starts a new item where its side follows. */
  private boolean isOther(Headings.Found found, int here) {
    return !isMine(found) || (found.at() == here && last != Last.SIDE && !found.heading().kept());
  }

  /** Says whether a slot reads the words of a heading and more, as that of a pinhole does. */
  private boolean readsOver(Headings.Found found) {
    int here = cursor.place();
    cursor.back(found.at());
    int mine = longest().map(this::end).orElse(found.at());
    cursor.back(here);
    return mine > found.end();
  }

  private boolean namesSide(int at) {
    return joints.namesSide(at);
  }

  /** Says whether each value so far stands before its side, as in 14 OD 16. */
  private boolean waitsForSide() {
    return head.hasValues() && groups.stream().allMatch(group -> group.said().hasValues());
  }

  /** Says whether a "no" behind an eye is that of the next item: ptosis R no ptosis L. */
  private boolean deniesNext() {
    int here = cursor.place();
    boolean denies =
        last == Last.SIDE
            && Denial.isNo(cursor.token())
            && headings.certain(tokens, here + 1).filter(next -> next.at() == here + 1).isPresent();
    return denies && longest().map(this::end).orElse(here) <= here + 1;
  }

  private boolean isMine(Headings.Found next) {
    return next.grammar().equals(grammar);
  }

  private boolean slotReads() {
    return longest().isPresent();
  }

  /** A plus stands between two values where a word follows: pink + flat. */
  private boolean takePlus() {
    int at = cursor.place();
    if (cursor.take("+") && !cursor.atEnd() && slotReads() && isWord(cursor.token())) {
      return true;
    }
    cursor.back(at);
    return false;
  }

  private static boolean isWord(Token token) {
    return token.kind() == Token.Kind.WORD;
  }

  private boolean takeSide(Token here) throws NotRead {
    Optional<Site> side = cursor.attempt(Common.SIDES);
    if (side.isEmpty()) {
      return false;
    }
    boolean ofBoth = plural && side.get() == Site.BOTH;
    boolean sideAlone = cursor.atEnd() && isBehindComma(here);
    if (afterComma && head.hasValuesOfEyes() && groups.isEmpty() && !ofBoth && !sideAlone) {
      throw NotRead.at(here, "before the comma no side is named: put each value behind its side");
    }
    boolean again = groups.stream().anyMatch(group -> group.side().equals(side));
    // Both eyes are said again of the next value: discs OU pink, OU sharp. One eye may be a slip.
    if (again && (side.get() != Site.BOTH || groups.size() > 1)) {
      throw NotRead.at(
          here, "\"" + here.seen() + "\" names an eye that was named in this item before");
    }
    if (!again) {
      groups.add(new Group(side, here, new Said()));
    }
    afterComma = false;
    denied = false;
    last = Last.SIDE;
    return true;
  }

  /** Says whether a comma stands just before a word, and none before that: IOP 14, OU. */
  private boolean isBehindComma(Token word) {
    return commas.size() == 1 && tokens.indexOf(word) == tokens.indexOf(commas.get(0)) + 1;
  }

  /**
   * Moves past the heading where it is said again behind a side: R IOP 14 L IOP 16. Where nothing
   * follows, the side may be of what stands before it: no ptosis L ptosis.
   */
  private boolean takeHeading() throws NotRead {
    boolean taken =
        last == Last.SIDE
            && grammar.headings().stream()
                .filter(heading -> !heading.kept())
                .anyMatch(heading -> cursor.take(heading.phrase()));
    if (taken && cursor.atEnd() && head.hasValuesOfEyes() && groups.size() == 1) {
      throw NotRead.at(groups.get(groups.size() - 1).at(), OF_EITHER);
    }
    return taken;
  }

  /** Moves past an "of" between a heading, or a side, and a number: VA of 6/9. */
  private boolean takeOf() {
    int at = cursor.place();
    boolean before = last == Last.HEADING || last == Last.SIDE;
    if (before && cursor.take("of") && !cursor.atEnd() && isNumber(cursor.token())) {
      return true;
    }
    cursor.back(at);
    return false;
  }

  private static boolean isNumber(Token token) {
    return token.kind() == Token.Kind.NUMBER;
  }

  private boolean takePause() {
    boolean joins =
        last == Last.VALUE || last == Last.CONDITION || (last == Last.SIDE && head.hasValues());
    boolean value = last == Last.VALUE;
    // Behind a side that its value stands before, what follows is of the next: pink R and pale L.
    boolean parts =
        last == Last.SIDE && head.hasValues() && cursor.sees("and") && groups.size() == 1;
    boolean taken = (!value && cursor.takeAny(":", "=")) || takeOf();
    taken =
        taken
            || (joins && joints.takeJoint() && !cursor.atEnd())
            || joints.takeDash(last == Last.SIDE);
    taken = taken || (value && takePlus());
    if (taken) {
      last = Last.OTHER;
    }
    if (parts) {
      afterComma = true;
      commas.add(tokens.get(cursor.place() - 1));
    }
    return taken;
  }

  private boolean takeSlot() throws NotRead {
    Optional<Slot<?>> slot = longest();
    if (slot.isPresent()) {
      put(slot.get());
      boolean value = !slot.get().isCondition() && slot.get().role() != Slot.Role.VALUE_OF_PAIR;
      last = value ? Last.VALUE : Last.CONDITION;
    }
    return slot.isPresent();
  }

  private <T> void put(Slot<T> slot) throws NotRead {
    Token here = cursor.token();
    int start = cursor.place();
    T value = cursor.attempt(slot.matcher()).orElseThrow();
    List<Token> words = tokens.subList(start, cursor.place());
    String seen = Token.seen(words);
    requireClear(words);
    boolean alone = words.size() == 1 && Denial.isNo(here);
    if (alone && afterComma && !groups.isEmpty()) {
      // The sign that it denies may be missing.
      throw NotRead.word(here);
    }
    Said said = groups.isEmpty() ? head : groups.get(groups.size() - 1).said();
    said.put(slot, new Said.Entry<>(value, here, seen, afterComma));
  }

  /** A sign that is only named behind a denied one may be denied as well. */
  private void requireClear(List<Token> words) throws NotRead {
    boolean denies = words.stream().anyMatch(Denial::isNo);
    if (denied && !denies && Denial.isOnlyNamed(words)) {
      throw Denial.reaches(words.get(0));
    }
    denied = denies || (denied && last == Last.CONDITION);
  }

  private int end(Slot<?> slot) {
    int start = cursor.place();
    cursor.attempt(slot.matcher());
    int end = cursor.place();
    cursor.back(start);
    return end;
  }

  /** Returns the slot that reads most of what stands here; the cursor stays. */
  private Optional<Slot<?>> longest() {
    int start = cursor.place();
    int farthest = start;
    Optional<Slot<?>> best = Optional.empty();
    for (Slot<?> slot : grammar.slots()) {
      if (cursor.attempt(slot.matcher()).isPresent() && cursor.place() > farthest) {
        farthest = cursor.place();
        best = Optional.of(slot);
      }
      cursor.back(start);
    }
    return best;
  }
}
