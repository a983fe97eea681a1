package org.isopter.model.note.grammar;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
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

  static final String OF_EITHER = "it may name the eye of what is before it or of what follows";

  private final Grammar grammar;
  private final boolean plural;
  private final boolean size;
  private final List<Token> tokens;
  private final Cursor cursor;
  private final Joints joints;
  private final SlotFinder slots;
  private final ItemEnd ends;
  private final Said head = new Said();
  private final List<Group> groups = new ArrayList<>();
  private final List<Token> commas = new ArrayList<>();
  private boolean afterComma;
  private boolean denied;
  private Last last = Last.HEADING;

  /** What stands before the cursor. */
  enum Last {
    HEADING,
    SIDE,
    CONDITION,
    VALUE,
    OTHER
  }

  private Scan(ItemReader.Start start, Headings headings, List<Token> tokens) {
    this.grammar = start.grammar();
    this.plural = start.heading().plural();
    this.size = WordFiles.is(WordRole.SIZE, start.heading().phrase().get(0));
    this.tokens = tokens;
    this.cursor = new Cursor(tokens, 0);
    this.joints = new Joints(tokens, cursor);
    this.slots = new SlotFinder(grammar, cursor);
    this.ends = new ItemEnd(start, headings, tokens, cursor, head, groups);
  }

  static Scan of(ItemReader.Start start, Headings headings, List<Token> tokens) throws NotRead {
    Scan scan = new Scan(start, headings, tokens);
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
    while (!cursor.atEnd() && !ends.isHere(last)) {
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
    if (cursor.takeAny(")") || (!slots.read() && cursor.takeAny("("))) {
      return;
    }
    if (!takeHeading() && !takeSlot() && !takeSide(here) && !takePause()) {
      throw NotRead.word(here);
    }
  }

  /** A plus stands between two values where a word follows: pink + flat. */
  private boolean takePlus() {
    int at = cursor.place();
    if (cursor.take("+")
        && !cursor.atEnd()
        && slots.read()
        && cursor.token().kind() == Token.Kind.WORD) {
      return true;
    }
    cursor.back(at);
    return false;
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

  /** Says whether a sign named beside its eye goes on with another: papilloedema R with haems. */
  private boolean goesOnBehindSign() {
    int next = cursor.place() + 1;
    return Denial.isOfSign(grammar)
        && Common.isConnector(cursor.token())
        && next < tokens.size()
        && !Denial.isNo(tokens.get(next));
  }

  /** Moves past an "of" between a heading, or a side, and a number: VA of 6/9. */
  private boolean takeOf() {
    int at = cursor.place();
    boolean before = last == Last.HEADING || last == Last.SIDE || last == Last.CONDITION;
    if (before && cursor.take("of") && !cursor.atEnd() && cursor.token().isNumber()) {
      return true;
    }
    cursor.back(at);
    return false;
  }

  /**
   * Moves past an "in" or "on" before an eye, where no gaze and no side of a field can be meant.
   */
  private boolean takeIn() {
    int at = cursor.place();
    boolean seen = grammar.clockFace() || grammar.sides() == Grammar.Sides.NAMED;
    if (seen && cursor.takeAny("in", "on") && joints.namesSide(cursor.place())) {
      return true;
    }
    cursor.back(at);
    return false;
  }

  private boolean takePause() {
    boolean joins =
        last == Last.VALUE
            || last == Last.CONDITION
            || (last == Last.SIDE && (head.hasValues() || goesOnBehindSign()));
    boolean value = last == Last.VALUE;
    // Behind a side that its value stands before, what follows is of the next: pink R and pale L.
    boolean parts =
        last == Last.SIDE
            && head.hasValues()
            && (cursor.sees("and") || cursor.sees("/"))
            && groups.size() == 1;
    boolean taken = (!value && cursor.takeAny(":", "=")) || takeOf() || takeIn();
    taken =
        taken
            || (joins && joints.takeJoint() && !cursor.atEnd())
            || joints.takeDash()
            || takeDashBeforeValue();
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

  /**
   * Takes a dash with a space on either side between an eye and its value: R - pink. Before the
   * name of a sign it may deny it, and before a number it may be that of one below nought.
   */
  private boolean takeDashBeforeValue() {
    int at = cursor.place();
    if (last != Last.SIDE || !joints.isSpacedDash()) {
      return false;
    }
    cursor.back(at + 1);
    int end = slots.longest().filter(slot -> !slot.isCondition()).map(slots::end).orElse(at + 1);
    List<Token> words = tokens.subList(at + 1, end);
    boolean value = !words.isEmpty() && !Denial.isOnlyNamed(words) && !mayBeBelowNought(words);
    cursor.back(value ? at + 1 : at);
    return value;
  }

  private boolean mayBeBelowNought(List<Token> words) {
    List<Token> below = Lexer.read("-" + Token.seen(words));
    return words.get(0).isNumber() && !size && new SlotFinder(grammar, new Cursor(below, 0)).read();
  }

  private boolean takeSlot() throws NotRead {
    Optional<Slot<?>> slot = slots.longest();
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
}
