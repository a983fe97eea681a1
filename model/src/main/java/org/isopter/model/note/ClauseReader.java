package org.isopter.model.note;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Denial;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Headings;
import org.isopter.model.note.grammar.ItemReader;
import org.isopter.model.note.habit.UnknownSide;
import org.isopter.model.note.item.Grammars;
import org.isopter.model.note.token.Bullets;
import org.isopter.model.note.token.Clause;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;
import org.isopter.model.value.Site;

/** Reads the clauses of the examination, item by item. */
final class ClauseReader {

  private final Headings headings;
  private final ItemReader items;
  private final SideContext context;
  private final Gathered gathered;
  private final Denial denial = new Denial();

  /** The item that the next clause may go on with. */
  private Optional<ItemReader.Start> open = Optional.empty();

  /** Whether that item was the first of its line, and whether a line starts with this clause. */
  private boolean first;

  private boolean newLine;

  /** Whether a part of the clause that was not read ends with an eye, or is of one eye. */
  private boolean unreadEye;

  /** Whether what stands just before was not read, and may say what a number behind it is. */
  private boolean afterUnread;

  /** How much was said before the clause that is read. */
  private int clauseStart;

  /** A heading of which nothing is said yet. */
  private Optional<Piece> pending = Optional.empty();

  /** A heading of acuity, not read, that may say how what follows it was tested. */
  private final UnclearHeading unclear = new UnclearHeading();

  /** How much was said before the clause of that heading. */
  private int pendingStart;

  ClauseReader(
      Headings headings,
      Optional<OffsetDateTime> performed,
      SideContext context,
      Gathered gathered) {
    this.headings = headings;
    this.items = new ItemReader(headings, performed);
    this.context = context;
    this.gathered = gathered;
  }

  void read(Clause next) {
    List<Token> clause = next.tokens();
    newLine = next.newLine();
    int from = 0;
    int run = 0;
    int notedBefore = gathered.size();
    denial.clear();
    unreadEye = false;
    clauseStart = gathered.size();
    if (Bullets.isUnclear(clause.get(0)) && ItemStarts.isClearBehindDash(headings, clause)) {
      denial.open();
      from++;
    }
    while (from < clause.size()) {
      if (clause.get(from).is(",")) {
        from++;
        run = from;
        notedBefore = gathered.size();
        unreadEye = false;
      } else if (clause.get(from).is(NotRead.NO_PLACE)) {
        from = noPlace(clause.subList(from, clause.size()), from);
        run = from;
        notedBefore = gathered.size();
      } else if (from > run && from + 1 < clause.size() && Common.isConnector(clause.get(from))) {
        from++;
      } else {
        from = item(clause, from, run, notedBefore);
      }
    }
  }

  /** Ends the item that was open; a heading of which nothing was said is not read. */
  void close() {
    pending.ifPresent(
        piece -> {
          NotRead nothing = NotRead.because("nothing is said of it").orAt(piece.first());
          Optional<Grammar> grammar = open.map(ItemReader.Start::grammar);
          gathered.leave(nothing, piece, grammar);
          afterUnread = true;
          if (grammar.filter(Grammars::isOfAcuity).isPresent()) {
            takeBackBefore(piece, pendingStart);
          }
        });
    pending = Optional.empty();
    open = Optional.empty();
  }

  /** Ends the item that was open before something that is not read: old glasses. */
  void closeUnread() {
    close();
    afterUnread = true;
  }

  /**
   * Reads an item and returns where it ends.
   *
   * @param clause the clause
   * @param from where the item starts
   * @param run where the first of the items starts that follow each other without a mark between
   * @param notedBefore how much was said before that one
   */
  private int item(List<Token> clause, int from, int run, int notedBefore) {
    List<Token> tokens = clause.subList(from, clause.size());
    Optional<Headings.Found> headed = headings.at(tokens, 0);
    Optional<ItemReader.Start> alike = headed.flatMap(one -> goesOnAlike(one, tokens));
    Optional<Headings.Found> found = headed.filter(any -> alike.isEmpty());
    Optional<ItemReader.Start> start =
        alike.or(() -> found.map(this::start)).or(() -> goesOn(tokens, from));
    boolean ofEye = found.filter(ItemStarts::isCorrectionOfEye).isPresent();
    if (found.isPresent()) {
      close();
      if (!ofEye) {
        unclear.clear();
      }
    }
    int label = found.map(heading -> ItemStarts.label(heading, tokens, headings)).orElse(0);
    if (label > 0) {
      return from + label;
    }
    List<Token> rest = found.map(heading -> heading.rest(tokens, 0)).orElse(tokens);
    int skipped = found.map(Headings.Found::skipped).orElse(0);
    try {
      ItemStarts.requireBegun(from, found.isPresent(), rest);
      boolean tenths = !afterUnread && (start.isEmpty() || ofEye) && Grammars.isInTenths(rest);
      ItemReader.Start mine =
          start.orElseGet(() -> tenths ? Grammars.IN_TENTHS : Grammars.bare(rest));
      if (afterUnread && start.isEmpty() && Grammars.isLens(rest)) {
        throw NotRead.because("what stands before it was not read and may say which lens it is");
      }
      Optional<Site> side = context.side(mine.grammar());
      List<Token> said = tenths ? Grammars.counted(rest) : Grammars.countedFirst(rest);
      ItemReader.Item item = items.read(mine, said, tokens.get(0), side);
      int length = skipped + item.length() - (said.size() - rest.size());
      denial.requireClear(tokens.subList(0, length), item.facts());
      denial.requireSide(tokens.subList(0, length), item.facts(), unreadEye);
      Additions.requireOfEach(gathered.from(0), item.facts());
      BareHeadings.requireOfEach(item.facts());
      if (found.isEmpty()) {
        BareHeadings.requireWithoutPinhole(gathered.from(0), item.facts());
      }
      unclear.requireNone(ofEye ? Optional.empty() : start);
      took(item, new Piece(tokens.subList(0, length)));
      first = from == 0;
      return from + length;
    } catch (NotRead notRead) {
      // Without a mark between, where one item ends and the next starts is only known of both.
      int end = end(tokens, found, start);
      boolean apart = found.filter(at -> ItemStarts.areTwoNumbers(at, tokens, end)).isPresent();
      if (!apart) {
        gathered.forget(notedBefore);
      }
      leave(notRead, new Piece(clause.subList(apart ? from : run, from + end)), start);
      return from + end;
    }
  }

  private void leave(NotRead notRead, Piece piece, Optional<ItemReader.Start> start) {
    close();
    afterUnread = true;
    denial.left(piece.tokens());
    if (UnknownSide.mayBeIn(piece.tokens())) {
      context.lose();
    }
    context.leave(piece.tokens());
    unreadEye = unreadEye || ItemStarts.endsWithEye(piece.tokens());
    unclear.left(piece, start);
    gathered.leave(unsided(notRead, piece, start), piece, start.map(ItemReader.Start::grammar));
    if (BareHeadings.isPinholeAlone(piece.tokens())) {
      takeBackBefore(piece, clauseStart);
    }
  }

  private void takeBackBefore(Piece heading, int clause) {
    int from = BareHeadings.qualifiedBy(heading.tokens(), gathered.from(0), clause);
    if (BareHeadings.isPinholeAlone(heading.tokens())) {
      gathered.takeBackToPinhole(from);
    } else {
      gathered.takeBack(from, BareHeadings.WHY);
    }
  }

  /**
   * Returns the item with which an eye and its correction go on where that is an acuity, but none
   * at distance: NV R cc N5, L cc 6/12.
   */
  private Optional<ItemReader.Start> goesOnAlike(Headings.Found found, List<Token> tokens) {
    return goesOn(tokens, 0)
        .filter(any -> ItemStarts.isCorrectionOfEye(found))
        .filter(before -> Grammars.isOfAcuity(before.grammar()))
        .filter(before -> !before.grammar().equals(found.grammar()));
  }

  private Optional<ItemReader.Start> goesOn(List<Token> tokens, int from) {
    return open.filter(before -> (first || !newLine) && ItemStarts.goesOn(before, tokens, from));
  }

  /** A correction with its own line goes on with the chart and the notation of the line before. */
  private ItemReader.Start start(Headings.Found found) {
    return open.filter(before -> found.heading().kept())
        .filter(before -> before.grammar().equals(found.grammar()))
        .filter(before -> before.grammar().equals(Grammars.DISTANCE))
        .map(before -> before.again(found.heading()))
        .orElseGet(() -> ItemReader.Start.of(found.grammar(), found.heading()));
  }

  /** Leaves an item unread for which the record has no place, and returns where it ends. */
  private int noPlace(List<Token> tokens, int from) {
    close();
    afterUnread = true;
    boolean label = tokens.size() > 1 && tokens.get(1).is(",");
    int end = label ? 1 : beforeDenied(tokens, end(tokens, Optional.empty(), Optional.empty()));
    Piece piece = new Piece(tokens.subList(0, end));
    Token first = piece.first();
    context.leave(piece.tokens());
    // A phrase may hide another eye than that of the line.
    context.leave(Lexer.read(first.seen()));
    unreadEye = unreadEye || ItemStarts.endsWithEye(piece.tokens());
    NotRead why = NotRead.at(first, "the record has no place for \"" + first.seen() + "\"");
    gathered.leave(why, piece, Optional.empty());
    return from + end;
  }

  /** Returns where a sign of its own is denied before the end: no pain no diplopia. */
  private int beforeDenied(List<Token> tokens, int end) {
    for (int i = 1; i < end; i++) {
      if (Denial.isNo(tokens.get(i)) && headings.runningOn(tokens, i).isPresent()) {
        return i;
      }
    }
    return end;
  }

  private void took(ItemReader.Item item, Piece piece) {
    open = Optional.of(item.start()).filter(start -> start.grammar().sides().namesAnEye());
    pending = item.facts().isEmpty() ? Optional.of(piece) : Optional.empty();
    pendingStart = clauseStart;
    afterUnread = afterUnread && item.facts().isEmpty();
    denial.said(item.facts());
    item.facts().forEach(fact -> gathered.add(fact, piece));
  }

  /** Returns where an item that was not read ends: before a comma and a heading, or at the end. */
  private int end(
      List<Token> tokens, Optional<Headings.Found> found, Optional<ItemReader.Start> start) {
    int from = found.map(heading -> heading.at() + 1).orElse(1);
    for (int i = from; i < tokens.size(); i++) {
      boolean next = i + 1 < tokens.size() && tokens.get(i + 1).is(NotRead.NO_PLACE);
      int place = i + 1;
      boolean heading =
          headings
              .runningOn(tokens, place)
              .filter(
                  other ->
                      !Common.namesSide(tokens)
                          || start.filter(mine -> mine.reads(tokens, place, other)).isEmpty())
              .isPresent();
      if (tokens.get(i).is(",") && (next || heading)) {
        return i;
      }
    }
    return tokens.size();
  }

  /** Two numbers without a side are better explained by the side that is missing. */
  private NotRead unsided(NotRead notRead, Piece piece, Optional<ItemReader.Start> start) {
    Optional<Grammar> grammar = start.map(ItemReader.Start::grammar);
    boolean needsSide = grammar.filter(one -> one.sides().namesAnEye()).isPresent();
    boolean number = notRead.at().map(at -> at.kind() != Token.Kind.WORD).orElse(false);
    boolean lacks = !Common.namesSide(piece.tokens()) && grammar.flatMap(context::side).isEmpty();
    return needsSide && number && lacks ? NotRead.at(piece.first(), ItemReader.NO_SIDE) : notRead;
  }
}
