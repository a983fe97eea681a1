package org.isopter.model.clinical.statement;

import java.util.List;
import java.util.stream.Stream;
import org.isopter.model.finding.Citation;

/** What a function is about to speak of: the kind of statement, its source and the facts used. */
public record StatementBuilder(String id, Citation source, List<String> because) {

  /** Begins a statement of an id, from a source, on facts that are listed by their words. */
  public static StatementBuilder of(String id, Citation source, Object... facts) {
    return new StatementBuilder(id, source, List.of(facts).stream().map(String::valueOf).toList());
  }

  /** Returns the statement with its sentence. */
  public Statement say(Certainty certainty, String text) {
    return new Statement(id, text, because, certainty, source);
  }

  /** Returns the answer with its value and the sentence that states it. */
  public <T> Answer<T> given(T value, Certainty certainty, String text) {
    return new Answer.Given<>(value, say(certainty, text));
  }

  /** Returns an answer without a value, and the sentence that says why. */
  public <T> Answer<T> withheld(String text) {
    return new Answer.Withheld<>(say(Certainty.CANNOT_TELL, text));
  }

  /** Returns this topic with a further fact. */
  public StatementBuilder with(String fact) {
    return new StatementBuilder(
        id, source, Stream.concat(because.stream(), Stream.of(fact)).toList());
  }
}
