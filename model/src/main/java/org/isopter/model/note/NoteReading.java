package org.isopter.model.note;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.exam.Fact;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Denial;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Headings;
import org.isopter.model.note.grammar.ItemReader;
import org.isopter.model.note.habit.Habits;
import org.isopter.model.note.habit.OtherTimes;
import org.isopter.model.note.habit.PastTense;
import org.isopter.model.note.habit.UnknownSide;
import org.isopter.model.note.item.Grammars;
import org.isopter.model.note.token.Clause;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;
import org.isopter.model.value.Site;

/** The reading of one note, clause by clause. */
final class NoteReading {

  private final Habits habits;
  private final FormTrial trial;
  private final String text;
  private final Headings headings;
  private final ItemReader items;
  private final List<NotedFact> noted = new ArrayList<>();
  private final List<Unread> unread = new ArrayList<>();
  private final SideContext context = new SideContext();
  private final Denial denial = new Denial();

  /** The item that the next clause may go on with. */
  private Optional<ItemReader.Start> open = Optional.empty();

  /** Whether that item was the first of its line, and whether a line starts with this clause. */
  private boolean first;

  private boolean newLine;

  /** How much was said before the clause that is read. */
  private int clauseStart;

  /** The place of a heading of which nothing is said yet. */
  private Optional<Piece> pending = Optional.empty();

  /** Some neighbouring tokens of the note. */
  private record Piece(List<Token> tokens) {
    Token first() {
      return tokens.get(0);
    }

    String of(String text) {
      return text.substring(first().start(), tokens.get(tokens.size() - 1).end());
    }
  }

  /**
   * Makes a reading.
   *
   * @param asking whether what an unread item may mean is looked for
   */
  NoteReading(
      String text,
      Headings headings,
      Optional<OffsetDateTime> performed,
      Habits habits,
      boolean asking) {
    this.text = text;
    this.headings = headings;
    this.habits = habits;
    this.trial = new FormTrial(headings, performed, habits, asking);
    this.items = new ItemReader(headings, performed);
  }

  Note read() {
    List<Clause> clauses = clauses();
    OtherScope scope = new OtherScope(headings, text);
    int before = 0;
    for (Clause clause : clauses) {
      if (clause.afterGap()) {
        close();
      }
      if (context.enter(clause, clauses)) {
        continue;
      }
      boolean other = scope.covers(clause);
      if (OtherTimes.takeBack(clause.tokens())) {
        takeBack(OtherTimes.takeBackAll(clause.tokens()) ? 0 : before);
      }
      before = noted.size();
      if (OtherTimes.areIn(clause.tokens())) {
        scope.opened(clause, clause.equals(clauses.get(0)));
        other = true;
      }
      scope.passed(clause, other);
      if (other) {
        notOfNow(new Piece(clause.tokens()));
      } else {
        newLine = clause.newLine();
        read(clause.tokens());
      }
    }
    close();
    Contradictions contradictions = Contradictions.among(noted);
    unread.addAll(contradictions.unread());
    unread.replaceAll(item -> item.nearest(trial.nearest(Stream.of(item.nearest()))));
    unread.sort(Comparator.comparing(Unread::line).thenComparing(Unread::column));
    return new Note(contradictions.facts(), unread);
  }

  private List<Clause> clauses() {
    PastTense past = new PastTense();
    return Clause.of(tokens()).stream()
        .map(this::withoutDiagnosis)
        .map(this::withoutNearScales)
        .map(clause -> past.told(clause, new Piece(clause.tokens()).of(text)))
        .toList();
  }

  /** Leaves a diagnosis before a colon unread: Horner R: ptosis R 1 mm. */
  private Clause withoutDiagnosis(Clause clause) {
    List<Token> tokens = clause.tokens();
    int length = OtherTimes.diagnosis(tokens);
    if (length == 0) {
      return clause;
    }
    Piece label = new Piece(tokens.subList(0, length));
    NotRead why = NotRead.at(label.first(), "the record has no place for a diagnosis");
    unread.add(unread(why, label, Optional.empty()).withoutReadings());
    List<Token> rest = tokens.subList(length, tokens.size());
    return new Clause(rest, clause.newLine(), clause.afterGap(), clause.newSentence());
  }

  /** Leaves the near sizes behind an acuity unread: AV OD 10/10 P2. */
  private Clause withoutNearScales(Clause clause) {
    List<Token> rest = new ArrayList<>();
    Optional<Token> scale = Optional.empty();
    int at = 0;
    while (at < clause.tokens().size()) {
      int length = NearScales.behindAcuity(clause.tokens(), at);
      if (length == 0) {
        rest.add(clause.tokens().get(at));
      } else {
        Piece size = new Piece(clause.tokens().subList(at, at + length));
        NotRead why = NotRead.at(size.first(), NearScales.WHY);
        unread.add(unread(why, size, Optional.empty()).withoutReadings());
        scale = Optional.of(size.first());
      }
      at += Math.max(1, length);
    }
    List<Token> said = scale.map(size -> NearScales.withHeading(rest, size)).orElse(rest);
    return new Clause(said, clause.newLine(), clause.afterGap(), clause.newSentence());
  }

  private List<Token> tokens() {
    List<Token> said = habits.book().apply(OrLists.spelledOut(Lexer.read(text)));
    List<Token> sided = SidePairs.parted(HeadingDashes.colons(said));
    return HalfFieldOrder.of(Additions.joined(OtherTimes.parted(sided)));
  }

  /** Leaves unread what was read before words that take it back: sorry, left. */
  private void takeBack(int from) {
    close();
    context.lose();
    List<NotedFact> back = noted.subList(from, noted.size());
    List<Unread> items = new ArrayList<>();
    for (NotedFact one : back) {
      Unread item =
          new Unread(
              one.at().start(),
              one.at().line(),
              one.at().column(),
              one.item(),
              "what follows may take it back",
              one.item(),
              List.of());
      if (!items.contains(item)) {
        items.add(item);
      }
    }
    unread.addAll(items);
    back.clear();
  }

  private void read(List<Token> clause) {
    int from = 0;
    int run = 0;
    int notedBefore = noted.size();
    denial.clear();
    clauseStart = noted.size();
    while (from < clause.size()) {
      if (clause.get(from).is(",")) {
        from++;
        run = from;
        notedBefore = noted.size();
      } else if (from > run && from + 1 < clause.size() && Common.isConnector(clause.get(from))) {
        from++;
      } else {
        from = item(clause, from, run, notedBefore);
      }
    }
  }

  private void notOfNow(Piece piece) {
    close();
    context.lose();
    String why = "it may be of another time, another person, or not certain";
    unread.add(unread(NotRead.at(piece.first(), why), piece, Optional.empty()).withoutReadings());
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
    Optional<Headings.Found> found = headings.at(tokens, 0);
    Optional<ItemReader.Start> start =
        found
            .map(this::start)
            .or(
                () ->
                    open.filter(
                        before -> (first || !newLine) && ItemStarts.goesOn(before, tokens, from)));
    if (found.isPresent()) {
      close();
    }
    if (tokens.get(0).is(NotRead.NO_PLACE)) {
      return noPlace(tokens, from);
    }
    List<Token> rest = found.map(heading -> heading.rest(tokens, 0)).orElse(tokens);
    int skipped = found.map(Headings.Found::skipped).orElse(0);
    try {
      ItemStarts.requireBegun(from, found.isPresent(), rest);
      ItemReader.Item item =
          items.read(start.orElse(Grammars.bare(rest)), rest, tokens.get(0), context.side());
      int length = skipped + item.length();
      denial.requireClear(tokens.subList(0, length), item.facts());
      requireSideOfDenial(tokens.subList(0, length), item.facts());
      Additions.requireOfEach(noted, item.facts());
      took(item, new Piece(tokens.subList(0, length)));
      first = from == 0;
      return from + length;
    } catch (NotRead notRead) {
      // Without a mark between, where one item ends and the next starts is only known of both.
      noted.subList(notedBefore, noted.size()).clear();
      Piece piece = new Piece(clause.subList(run, from + end(tokens, found)));
      close();
      if (UnknownSide.mayBeIn(piece.tokens())) {
        context.lose();
      }
      unread.add(
          unread(unsided(notRead, piece, start), piece, start.map(ItemReader.Start::grammar)));
      return run + piece.tokens().size();
    }
  }

  /** Behind what is said of one eye, a sign that is denied without a side may be that eye's. */
  private void requireSideOfDenial(List<Token> item, List<Fact<?>> facts) throws NotRead {
    List<Site> before =
        eyes(noted.subList(clauseStart, noted.size()).stream().map(NotedFact::fact));
    boolean ofBoth = eyes(facts.stream()).size() == 2;
    if (before.size() == 1 && ofBoth && Denial.isNo(item.get(0)) && !ItemStarts.namesSide(item)) {
      throw NotRead.because(ItemReader.NO_SIDE);
    }
  }

  private static List<Site> eyes(Stream<? extends Fact<?>> facts) {
    return facts.<Site>map(Fact::site).filter(Site.EACH_EYE::contains).distinct().toList();
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
    boolean label = tokens.size() > 1 && tokens.get(1).is(",");
    Piece piece = new Piece(tokens.subList(0, label ? 1 : end(tokens, Optional.empty())));
    Token first = piece.first();
    NotRead why = NotRead.at(first, "the record has no place for \"" + first.seen() + "\"");
    unread.add(unread(why, piece, Optional.empty()));
    return from + piece.tokens().size();
  }

  private void took(ItemReader.Item item, Piece piece) {
    open = Optional.of(item.start()).filter(start -> start.grammar().sides().namesAnEye());
    pending = item.facts().isEmpty() ? Optional.of(piece) : Optional.empty();
    for (Fact<?> fact : item.facts()) {
      noted.add(new NotedFact(fact, piece.first(), piece.of(text)));
    }
  }

  /** Ends the item that was open; a heading of which nothing was said is not read. */
  private void close() {
    pending.ifPresent(
        piece -> {
          NotRead nothing = NotRead.because("nothing is said of it").orAt(piece.first());
          unread.add(unread(nothing, piece, open.map(ItemReader.Start::grammar)));
        });
    pending = Optional.empty();
    open = Optional.empty();
  }

  /** Returns where an item that was not read ends: before a comma and a heading, or at the end. */
  private int end(List<Token> tokens, Optional<Headings.Found> found) {
    int from = found.map(heading -> heading.at() + 1).orElse(1);
    for (int i = from; i < tokens.size(); i++) {
      boolean next = i + 1 < tokens.size() && tokens.get(i + 1).is(NotRead.NO_PLACE);
      if (tokens.get(i).is(",") && (next || headings.runningOn(tokens, i + 1).isPresent())) {
        return i;
      }
    }
    return tokens.size();
  }

  /** Two numbers without a side are better explained by the side that is missing. */
  private NotRead unsided(NotRead notRead, Piece piece, Optional<ItemReader.Start> start) {
    boolean needsSide = start.map(s -> s.grammar().sides().namesAnEye()).orElse(false);
    boolean number = notRead.at().map(at -> at.kind() != Token.Kind.WORD).orElse(false);
    boolean lacks = !ItemStarts.namesSide(piece.tokens()) && context.side().isEmpty();
    return needsSide && number && lacks ? NotRead.at(piece.first(), ItemReader.NO_SIDE) : notRead;
  }

  private Unread unread(NotRead notRead, Piece piece, Optional<Grammar> grammar) {
    Token at = notRead.at().orElse(piece.first());
    return new Unread(
        piece.first().start(),
        at.line(),
        at.column(),
        piece.of(text),
        Advice.why(notRead, at, headings),
        trial.nearest(Advice.near(notRead, at, piece.of(text), piece.first().start(), grammar)),
        trial.readings(piece.of(text)));
  }
}
