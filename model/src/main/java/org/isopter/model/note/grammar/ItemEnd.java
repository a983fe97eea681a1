package org.isopter.model.note.grammar;

import java.util.List;
import java.util.Optional;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;
import org.isopter.model.value.Site;

/** Finds where an item ends and the next one starts, with or without a mark between. */
final class ItemEnd {

  private final Grammar grammar;
  private final boolean plural;
  private final Headings headings;
  private final List<Token> tokens;
  private final Cursor cursor;
  private final Joints joints;
  private final SlotFinder slots;
  private final Said head;
  private final List<Scan.Group> groups;
  private Scan.Last last = Scan.Last.HEADING;

  /**
   * Makes one for an item that is being read.
   *
   * @param start how the item starts
   * @param tokens the item and what follows it
   * @param cursor the place up to which it is read, which moves on with the reader
   * @param head what is said before any side, which grows
   * @param groups what is said of each side, which grows
   */
  ItemEnd(
      ItemReader.Start start,
      Headings headings,
      List<Token> tokens,
      Cursor cursor,
      Said head,
      List<Scan.Group> groups) {
    this.grammar = start.grammar();
    this.plural = start.heading().plural();
    this.headings = headings;
    this.tokens = tokens;
    this.cursor = cursor;
    this.joints = new Joints(tokens, cursor);
    this.slots = new SlotFinder(grammar, cursor);
    this.head = head;
    this.groups = groups;
  }

  /**
   * Says whether the item ends at the cursor, which stays.
   *
   * @param before what stands before the cursor
   */
  boolean isHere(Scan.Last before) throws NotRead {
    last = before;
    return (cursor.sees(",") && endsAtComma())
        || endsAtConnector()
        || deniesNext()
        || changesCondition()
        || runsIntoNext();
  }

  /** Says whether what follows the comma is an item of its own rather than a word of this one. */
  private boolean endsAtComma() {
    int comma = cursor.place();
    cursor.take(",");
    if (cursor.sees(NotRead.NO_PLACE)) {
      cursor.back(comma);
      return true;
    }
    boolean sidesBehind = last == Scan.Last.SIDE && head.hasValues() && !endsWithCondition();
    int end = sidesBehind ? comma : slots.longest().map(slots::end).orElse(comma);
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
    return slots
        .longest()
        .filter(Slot::isCondition)
        .filter(slot -> nothingMore(slots.end(slot)))
        .isPresent();
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
    Optional<Slot<?>> next = anew ? slots.longest() : Optional.empty();
    if (next.isEmpty() || !next.get().isCondition() || !head.has(next.get())) {
      return false;
    }
    int here = cursor.place();
    cursor.back(slots.end(next.get()));
    boolean side = !cursor.atEnd() && joints.namesSide(cursor.place());
    cursor.back(here);
    return side;
  }

  /** Says whether a word that joins stands before an item of its own: full with no diplopia. */
  private boolean endsAtConnector() {
    int here = cursor.place();
    boolean said = head.hasValues() || groups.stream().anyMatch(group -> group.said().hasValues());
    if (!said || !Common.isConnector(cursor.token()) || slots.read()) {
      return false;
    }
    cursor.back(here + 1);
    if (cursor.sees(NotRead.NO_PLACE)) {
      cursor.back(here);
      return true;
    }
    int mine = cursor.atEnd() ? here : slots.longest().map(slots::end).orElse(here);
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
    int mine = slots.longest().map(slots::end).orElse(here);
    Optional<Headings.Found> next =
        headings
            .runningOn(tokens, here)
            .filter(found -> isOther(found, here) && (mine == here || found.end() > mine))
            .filter(found -> !readsOver(found));
    boolean sideBetween =
        next.filter(found -> found.at() > here).isPresent() && joints.namesSide(here);
    if (sideBetween && head.hasValues() && groups.isEmpty()) {
      throw NotRead.at(cursor.token(), Scan.OF_EITHER);
    }
    return next.isPresent() && !(sideBetween && waitsForSide());
  }

  /** A heading of this item said again starts a new item where its side follows. */
  private boolean isOther(Headings.Found found, int here) {
    return !isMine(found)
        || (found.at() == here && last != Scan.Last.SIDE && !found.heading().kept());
  }

  /** Says whether a slot reads the words of a heading and more, as that of a pinhole does. */
  private boolean readsOver(Headings.Found found) {
    int here = cursor.place();
    cursor.back(found.at());
    int mine = slots.longest().map(slots::end).orElse(found.at());
    cursor.back(here);
    return mine > found.end();
  }

  /** Says whether each value so far stands before its side, as in 14 OD 16. */
  private boolean waitsForSide() {
    return head.hasValues() && groups.stream().allMatch(group -> group.said().hasValues());
  }

  /** Says whether a "no" behind an eye is that of the next item: ptosis R no ptosis L. */
  private boolean deniesNext() {
    int here = cursor.place();
    boolean denies =
        last == Scan.Last.SIDE
            && Denial.isNo(cursor.token())
            && headings.certain(tokens, here + 1).filter(next -> next.at() == here + 1).isPresent();
    return denies && slots.longest().map(slots::end).orElse(here) <= here + 1;
  }

  private boolean isMine(Headings.Found next) {
    return next.grammar().equals(grammar);
  }
}
