package org.isopter.model.finding;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Term;
import org.isopter.model.value.Unit;

/** The shapes of single values, ready to be used in a catalogue entry. */
public final class Shapes {

  private Shapes() {}

  /** Returns the shape of a number in one unit. */
  public static Shape<Quantity> measure(Unit unit, String least, String most, int decimals) {
    return measure(decimals, Span.of(unit, least, most));
  }

  /** Returns the shape of a number in one of several units. */
  public static Shape<Quantity> measure(int decimals, Span... spans) {
    return new Shape<>(
        new Spec.Measure(List.of(spans), decimals),
        quantity -> new Datum.Measure(quantity.value(), quantity.unit()),
        datum -> quantity((Datum.Measure) datum));
  }

  /** Returns the shape of a number whose unit is always the same and so is not part of the type. */
  public static Shape<BigDecimal> number(Unit unit, String least, String most, int decimals) {
    return measure(unit, least, most, decimals).as(Quantity::value, n -> new Quantity(n, unit));
  }

  /** Returns the shape of a whole number. */
  public static Shape<Integer> count(int least, int most) {
    return new Shape<>(
        new Spec.Count(least, most), Datum.Count::new, datum -> ((Datum.Count) datum).value());
  }

  /** Returns the shape of two numbers of one unit. */
  public static Shape<Datum.Ratio> ratio(Spec.Ratio spec) {
    return new Shape<>(spec, ratio -> ratio, datum -> (Datum.Ratio) datum);
  }

  /** Returns the shape of yes or no. */
  public static Shape<Boolean> truth() {
    return new Shape<>(new Spec.Truth(), Datum.Truth::new, datum -> ((Datum.Truth) datum).value());
  }

  /** Returns the shape of free text. */
  public static Shape<String> text(int longest) {
    return new Shape<>(
        new Spec.Text(longest), Datum.Text::new, datum -> ((Datum.Text) datum).value());
  }

  /** Returns the shape of one constant of an enumeration. */
  public static <E extends Enum<E> & Concept> Shape<E> oneOf(Class<E> type) {
    return oneOf(Answers.of(type), type);
  }

  /** Returns the shape of one concept of a list. */
  public static <C extends Concept> Shape<C> oneOf(Answers answers, Class<C> type) {
    return new Shape<>(
        new Spec.Coded(answers),
        Datum.Coded::new,
        datum -> type.cast(((Datum.Coded) datum).concept()));
  }

  /** Returns the shape of one of a few words that need no Java type; each gets a code of ours. */
  public static Shape<Term> oneOfWords(String list, String... words) {
    List<Term> terms = new ArrayList<>();
    for (String word : Arrays.asList(words)) {
      String display =
          word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1).replace('-', ' ');
      terms.add(new Term(word, Code.local(list, word, display)));
    }
    return oneOf(Answers.of(list, terms), Term.class);
  }

  private static Quantity quantity(Datum.Measure measure) {
    return new Quantity(measure.value(), measure.unit());
  }
}
