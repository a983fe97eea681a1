package org.isopter.model.note.grammar;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Token;

/** Finds where an item starts, and which grammar reads it. */
public final class Headings {

  private static final int WORDS_BEFORE = 4;

  /**
   * The start of an item.
   *
   * @param grammar what reads the item
   * @param heading the phrase that was found
   * @param at where the phrase stands in the tokens
   */
  public record Found(Grammar grammar, Heading heading, int at) {

    /** Returns the tokens from a place on, without the phrase where it says nothing itself. */
    public List<Token> rest(List<Token> tokens, int from) {
      List<Token> rest = new ArrayList<>(tokens.subList(from, at));
      rest.addAll(tokens.subList(at + skipped(), tokens.size()));
      return rest;
    }

    /** Returns where the phrase ends in the tokens. */
    public int end() {
      return at + heading.phrase().size();
    }

    /** Returns how many tokens of the phrase say nothing beside where it stands. */
    public int skipped() {
      return heading.kept() ? 0 : heading.phrase().size();
    }
  }

  /** The phrases by their first word, in the order of the grammars. */
  private final Map<String, List<Entry>> byWord = new HashMap<>();

  /** A phrase, and the grammar whose items it starts. */
  private record Entry(Grammar grammar, Heading heading) {}

  public Headings(List<Grammar> grammars) {
    for (Grammar grammar : grammars) {
      for (Heading heading : grammar.headings()) {
        byWord
            .computeIfAbsent(heading.phrase().get(0), any -> new ArrayList<>())
            .add(new Entry(grammar, heading));
      }
    }
  }

  /** Returns the item that starts here: heading, side and heading, or words and heading. */
  public Optional<Found> at(List<Token> tokens, int start) {
    return certain(tokens, start).or(() -> floating(tokens, start));
  }

  /** Returns what reads words that are one heading and no more, perhaps with a side before it. */
  public Optional<Grammar> alone(List<Token> words) {
    return certain(words, 0)
        .filter(found -> found.end() == words.size() && !found.heading().kept())
        .map(Found::grammar);
  }

  /** Returns the item that starts here with a heading, or with a side and a heading. */
  public Optional<Found> certain(List<Token> tokens, int start) {
    return longest(tokens, start, false).or(() -> longest(tokens, afterSide(tokens, start), false));
  }

  /** Returns the item that starts here in the middle of a clause: certain, or a "no" before it. */
  public Optional<Found> runningOn(List<Token> tokens, int start) {
    boolean denied = start < tokens.size() && Denial.isNo(tokens.get(start));
    return denied ? at(tokens, start) : certain(tokens, start);
  }

  private Optional<Found> floating(List<Token> tokens, int start) {
    for (int i = start + 1; i < Math.min(start + WORDS_BEFORE, tokens.size()); i++) {
      if (tokens.get(i - 1).is(",")) {
        return Optional.empty();
      }
      Optional<Found> found = longest(tokens, i, true);
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  private Optional<Found> longest(List<Token> tokens, int at, boolean floatingOnly) {
    if (at >= tokens.size()) {
      return Optional.empty();
    }
    Optional<Found> best = Optional.empty();
    int length = 0;
    for (Entry entry : byWord.getOrDefault(tokens.get(at).text(), List.of())) {
      Heading heading = entry.heading();
      boolean candidate = heading.phrase().size() > length && (heading.floating() || !floatingOnly);
      if (candidate && new Cursor(tokens, at).take(heading.phrase())) {
        length = heading.phrase().size();
        best = Optional.of(new Found(entry.grammar(), heading, at));
      }
    }
    return best;
  }

  private static int afterSide(List<Token> tokens, int start) {
    Cursor cursor = new Cursor(tokens, start);
    boolean side = cursor.attempt(Common.SIDES).isPresent();
    return side ? skipColon(cursor) : tokens.size();
  }

  private static int skipColon(Cursor cursor) {
    cursor.take(":");
    return cursor.place();
  }
}
