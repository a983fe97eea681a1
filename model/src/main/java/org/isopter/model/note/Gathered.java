package org.isopter.model.note;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.exam.Fact;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Headings;
import org.isopter.model.note.habit.PossibleReading;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;
import org.isopter.model.value.Site;

/** What was read of a note so far, and what was not. */
final class Gathered {

  private final String text;
  private final Headings headings;
  private final FormTrial trial;
  private final List<NotedFact> noted = new ArrayList<>();
  private final List<Unread> unread = new ArrayList<>();

  Gathered(String text, Headings headings, FormTrial trial) {
    this.text = text;
    this.headings = headings;
    this.trial = trial;
  }

  /** Returns how many facts there are. */
  int size() {
    return noted.size();
  }

  void add(Fact<?> fact, Piece item) {
    noted.add(new NotedFact(fact, item.first(), item.of(text)));
  }

  /** Returns what was read from a place on. */
  List<NotedFact> from(int place) {
    return noted.subList(Math.min(place, noted.size()), noted.size());
  }

  /** Returns the eyes, of the two, that facts are about. */
  static List<Site> eyes(Stream<? extends Fact<?>> facts) {
    return facts.<Site>map(Fact::site).filter(Site.EACH_EYE::contains).distinct().toList();
  }

  /** Forgets what was read from a place on. */
  void forget(int place) {
    from(place).clear();
  }

  /** Leaves unread what was read from a place on, before words that may change it. */
  void takeBack(int place, String why) {
    from(place).stream().map(one -> one.unread(why)).distinct().forEach(unread::add);
    forget(place);
  }

  /** Leaves acuities unread that may have been read through a pinhole; offers them so. */
  void takeBackToPinhole(int place) {
    List<NotedFact> acuities = List.copyOf(from(place));
    for (NotedFact one : acuities) {
      List<NotedFact> item = acuities.stream().filter(one::sameItem).toList();
      if (item.indexOf(one) == 0) {
        unread.add(one.unread(BareHeadings.WHY).nearest(BareHeadings.throughPinhole(item)));
      }
    }
    forget(place);
  }

  /** Leaves a piece unread that may mean one of several things. */
  void leave(NotRead why, Piece piece, Optional<Grammar> grammar) {
    unread.add(unread(why, piece, grammar, trial.readings(piece.of(text))));
  }

  /** Leaves a piece unread that no answer makes read: of another time, a diagnosis. */
  void leaveUnasked(String why, Piece piece) {
    NotRead notRead = NotRead.at(piece.first(), why);
    unread.add(unread(notRead, piece, Optional.empty(), List.of()));
  }

  private Unread unread(
      NotRead notRead, Piece piece, Optional<Grammar> grammar, List<PossibleReading> readings) {
    Token at = notRead.at().orElse(piece.first());
    return new Unread(
        piece.first().start(),
        at.line(),
        at.column(),
        piece.of(text),
        Advice.why(notRead, at, headings),
        trial.nearest(Advice.near(notRead, at, piece.of(text), piece.first().start(), grammar)),
        readings);
  }

  /** Returns the note, with what contradicts itself unread. */
  Note note() {
    Contradictions contradictions = Contradictions.among(noted);
    List<Unread> all = new ArrayList<>(unread);
    all.addAll(contradictions.unread());
    all.replaceAll(item -> item.nearest(trial.nearest(Stream.of(item.nearest()))));
    all.sort(Comparator.comparing(Unread::line).thenComparing(Unread::column));
    return new Note(contradictions.facts(), all);
  }
}
