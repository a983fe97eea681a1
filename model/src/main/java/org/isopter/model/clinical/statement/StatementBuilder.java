package org.isopter.model.clinical.statement;

import java.util.List;
import java.util.stream.Stream;
import org.isopter.model.finding.Citation;

/** What a function is about to speak of: the kind of statement, its source and the facts used. */
public record StatementBuilder(String id, Citation source, List<String> because) {

  public static StatementBuilder of(String id, Citation source, Object... facts) {
    return new StatementBuilder(id, source, List.of(facts).stream().map(String::valueOf).toList());
  }

  public Statement say(Certainty certainty, String text) {
    return new Statement(id, text, because, certainty, source);
  }

  public <T> Answer<T> given(T value, Certainty certainty, String text) {
    return new Answer.Given<>(value, say(certainty, text));
  }

  public <T> Answer<T> withheld(String text) {
    return new Answer.Withheld<>(say(Certainty.CANNOT_TELL, text));
  }

  /** Returns this topic with a further fact. */
  public StatementBuilder with(String fact) {
    return new StatementBuilder(
        id, source, Stream.concat(because.stream(), Stream.of(fact)).toList());
  }
}
