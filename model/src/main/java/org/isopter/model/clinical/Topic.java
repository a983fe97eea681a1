package org.isopter.model.clinical;

import java.util.List;
import java.util.stream.Stream;
import org.isopter.model.shape.Citation;

/** What a function is about to speak of: the kind of statement, its source and the facts used. */
record Topic(String id, Citation source, List<String> because) {

  static Topic of(String id, Citation source, Object... facts) {
    return new Topic(id, source, List.of(facts).stream().map(String::valueOf).toList());
  }

  Statement say(Certainty certainty, String text) {
    return new Statement(id, text, because, certainty, source);
  }

  <T> Answer<T> given(T value, Certainty certainty, String text) {
    return new Answer.Given<>(value, say(certainty, text));
  }

  <T> Answer<T> withheld(String text) {
    return new Answer.Withheld<>(say(Certainty.CANNOT_TELL, text));
  }

  /** Returns this topic with a further fact. */
  Topic with(String fact) {
    return new Topic(id, source, Stream.concat(because.stream(), Stream.of(fact)).toList());
  }
}
