package org.isopter.model.finding;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.isopter.model.value.Concept;

/** What a fact must say for a code to hold: an answer of a part, of the value, or the technique. */
public sealed interface When {

  /** Says whether a value, found by a technique, says so. */
  boolean holds(EncodedValue panel, Optional<Concept> method);

  /** Returns what is asked: {@code correction}, {@code value} or {@code method}. */
  String subject();

  /** Returns the answers of which one must be given. */
  List<Concept> answers();

  /** Returns a name for identifiers, such as {@code correction-unaided}. */
  default String name() {
    return subject() + "-" + answers().get(0).word();
  }

  /** Returns the condition in words, such as {@code value is right or left}. */
  default String words() {
    return subject()
        + " is "
        + answers().stream().map(Concept::word).collect(Collectors.joining(" or "));
  }

  /** Returns what every reader of conditions makes of this one. */
  <R> R fold(Cases<R> cases);

  /**
   * One answer for each kind of condition.
   *
   * @param <R> what is made of a condition
   */
  interface Cases<R> {
    /** Answers for an answer of a part. */
    R part(Part part);

    /** Answers for an answer of the value. */
    R value(Value value);

    /** Answers for a technique. */
    R method(Method method);
  }

  /**
   * A part has this answer.
   *
   * @param key the key of the part
   * @param answer the answer
   */
  record Part(String key, Concept answer) implements When {
    @Override
    public String subject() {
      return key;
    }

    @Override
    public List<Concept> answers() {
      return List.of(answer);
    }

    @Override
    public boolean holds(EncodedValue panel, Optional<Concept> method) {
      return panel.found(key).orElse(null) instanceof Datum.Coded coded
          && coded.concept().equals(answer);
    }

    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.part(this);
    }
  }

  /**
   * The value is one of these answers.
   *
   * @param answers the answers, at least one
   */
  record Value(List<Concept> answers) implements When {
    public Value {
      answers = List.copyOf(answers);
    }

    @Override
    public String subject() {
      return "value";
    }

    @Override
    public boolean holds(EncodedValue panel, Optional<Concept> method) {
      return panel.value().orElse(null) instanceof Datum.Coded coded
          && answers.contains(coded.concept());
    }

    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.value(this);
    }
  }

  /**
   * The technique is one of these.
   *
   * @param answers the techniques, at least one
   */
  record Method(List<Concept> answers) implements When {
    public Method {
      answers = List.copyOf(answers);
    }

    @Override
    public String subject() {
      return "method";
    }

    @Override
    public boolean holds(EncodedValue panel, Optional<Concept> method) {
      return method.filter(answers::contains).isPresent();
    }

    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.method(this);
    }
  }
}
