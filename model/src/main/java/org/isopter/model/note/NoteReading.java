package org.isopter.model.note;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.note.arrange.HeadingDashes;
import org.isopter.model.note.arrange.HeadingLast;
import org.isopter.model.note.arrange.LabelledEyes;
import org.isopter.model.note.arrange.NothingSeen;
import org.isopter.model.note.arrange.Respectively;
import org.isopter.model.note.arrange.SideMarks;
import org.isopter.model.note.arrange.SidePairs;
import org.isopter.model.note.arrange.StrokePairs;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Headings;
import org.isopter.model.note.habit.Habits;
import org.isopter.model.note.habit.OtherTimes;
import org.isopter.model.note.habit.PastTense;
import org.isopter.model.note.habit.PinholeTail;
import org.isopter.model.note.habit.SectionSides;
import org.isopter.model.note.token.Clause;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.Token;

/** The reading of one note, clause by clause. */
final class NoteReading {

  private final Habits habits;
  private final String text;
  private final Headings headings;
  private final Gathered gathered;
  private final ClauseReader reader;
  private final SideContext context = new SideContext();

  /** The clauses before which a label names an eye, which may be another than that of the line. */
  private final List<Clause> ofOtherEye = new ArrayList<>();

  /**
   * Makes a reading.
   *
   * @param extent which forms of an unread item are tried
   */
  NoteReading(
      String text,
      Headings headings,
      Optional<OffsetDateTime> performed,
      Habits habits,
      FormTrial.Extent extent) {
    this.text = text;
    this.headings = headings;
    this.habits = habits;
    this.gathered =
        new Gathered(text, headings, new FormTrial(headings, performed, habits, extent));
    this.reader = new ClauseReader(headings, performed, context, gathered);
  }

  Note read() {
    List<Clause> clauses = clauses();
    OtherScope scope = new OtherScope(headings, text);
    int before = 0;
    for (Clause clause : clauses) {
      if (clause.afterGap()) {
        reader.close();
      }
      if (context.enter(clause, clauses)) {
        continue;
      }
      if (ofOtherEye.contains(clause)) {
        context.lose();
      }
      boolean other = scope.covers(clause);
      if (OtherTimes.takeBack(clause.tokens())) {
        takeBack(OtherTimes.takeBackAll(clause.tokens()) ? 0 : before);
      }
      before = gathered.size();
      if (OtherTimes.areIn(clause.tokens())) {
        scope.opened(clause, clause.equals(clauses.get(0)));
        other = true;
      }
      scope.passed(clause, other);
      if (other) {
        notOfNow(new Piece(clause.tokens()));
      } else {
        reader.read(clause);
      }
    }
    reader.close();
    return gathered.note();
  }

  private List<Clause> clauses() {
    PastTense past = new PastTense();
    List<Clause> clauses = new ArrayList<>();
    for (Clause clause : Clause.of(tokens())) {
      Clause rest = withoutLabel(clause);
      Clause sized = withoutNearScales(rest);
      Clause told = past.told(sized, new Piece(sized.tokens()).of(text));
      clauses.add(told);
      if (namesEye(clause, rest)) {
        ofOtherEye.add(told);
      }
    }
    return clauses;
  }

  /** Says whether what was left out of a clause names an eye. */
  private static boolean namesEye(Clause clause, Clause rest) {
    int left = clause.tokens().size() - rest.tokens().size();
    return Common.namesSide(clause.tokens().subList(0, left));
  }

  /** Leaves a diagnosis, a writer or an age before a colon unread: Horner R: ptosis R 1 mm. */
  private Clause withoutLabel(Clause clause) {
    List<Token> tokens = clause.tokens();
    int length = OtherTimes.diagnosis(tokens);
    if (length == 0) {
      return clause;
    }
    gathered.leaveUnasked(
        "the record has no place for it here", new Piece(tokens.subList(0, length)));
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
        gathered.leaveUnasked(NearScales.WHY, size);
        scale = Optional.of(size.first());
      }
      at += Math.max(1, length);
    }
    List<Token> said = scale.map(size -> NearScales.withHeading(rest, size)).orElse(rest);
    return new Clause(said, clause.newLine(), clause.afterGap(), clause.newSentence());
  }

  private List<Token> tokens() {
    List<Token> said = PinholeTail.apart(said(Respectively.parted(Lexer.read(text))));
    List<Token> first = HeadingLast.first(HeadingDashes.colons(said, headings), headings);
    List<Token> sided = StrokePairs.parted(SidePairs.parted(first), headings);
    List<Token> eyes = LabelledEyes.repeated(OtherTimes.parted(sided));
    return HalfFieldOrder.of(Additions.joined(eyes));
  }

  private List<Token> said(List<Token> written) {
    List<Token> listed = OrLists.spelledOut(SectionSides.apart(written));
    return NothingSeen.plain(SideMarks.plain(habits.book().apply(listed)));
  }

  private void takeBack(int from) {
    reader.close();
    context.lose();
    gathered.takeBack(from, "what follows may take it back");
  }

  private void notOfNow(Piece piece) {
    reader.closeUnread();
    context.lose();
    gathered.leaveUnasked("it may be of another time, another person, or not certain", piece);
  }
}
