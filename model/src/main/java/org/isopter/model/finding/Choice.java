package org.isopter.model.finding;

import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Result;

/**
 * A typed key to a value that is one of several alternatives; the notation says which.
 *
 * @param <V> the composite type
 * @param <C> the sealed type of the alternatives
 */
public final class Choice<V, C> {

  private final String key;
  private final Code code;
  private final Function<V, C> getter;
  private final List<Alternative<? extends C>> alternatives;
  private final Answers notations;
  private final Written<C> written;

  /**
   * How an alternative is written on one line, and read again.
   *
   * @param <C> the sealed type of the alternatives
   * @param pattern a regular expression that every written form matches
   * @param read reads the text; the other parts of the value may explain it
   * @param write writes the text that is read as the same again beside the other parts
   */
  public record Written<C>(
      String pattern,
      BiFunction<String, Values, Result<C>> read,
      BiFunction<C, Values, String> write) {}

  /**
   * Makes a choice.
   *
   * @param list the name of the list of notations
   * @param key what a table and a component call the notation
   * @param title the display of the component
   * @param getter reads the chosen alternative
   * @param written how it is written and read
   * @param alternatives the alternatives, each of a type of its own
   */
  public Choice(
      String list,
      String key,
      String title,
      Function<V, C> getter,
      Written<C> written,
      List<Alternative<? extends C>> alternatives) {
    this.key = key;
    this.code = Code.local("part", key, title);
    this.getter = getter;
    this.written = written;
    this.alternatives = List.copyOf(alternatives);
    this.notations =
        Answers.of(list, alternatives.stream().<Concept>map(Alternative::notation).toList());
  }

  /** Returns the notations, one per alternative. */
  public Answers notations() {
    return notations;
  }

  /** Returns the key of the notation. */
  public String key() {
    return key;
  }

  /** Returns the code of the component that carries the notation. */
  public Code code() {
    return code;
  }

  /** Returns the regular expression of the written forms. */
  public String pattern() {
    return written.pattern();
  }

  List<Alternative<? extends C>> alternatives() {
    return alternatives;
  }

  C in(V whole) {
    return getter.apply(whole);
  }

  Alternative<? extends C> alternativeOf(Object chosen) {
    return alternatives.stream()
        .filter(alternative -> alternative.holds(chosen))
        .findFirst()
        .orElseThrow(() -> new FaultException(Fault.of(key, "" + chosen, notations.choices())));
  }

  Optional<Alternative<? extends C>> named(Concept notation) {
    return alternatives.stream().filter(a -> a.notation().equals(notation)).findFirst();
  }

  C build(EncodedValue panel) {
    return panel
        .notation()
        .flatMap(this::named)
        .<C>map(alternative -> alternative.build(new Values(panel)))
        .orElseThrow(() -> new IllegalStateException(key + " was not checked"));
  }

  String write(EncodedValue panel) {
    return written.write().apply(build(panel), new Values(panel));
  }

  Result<C> read(String text, Values others) {
    return written.read().apply(text, others);
  }
}
