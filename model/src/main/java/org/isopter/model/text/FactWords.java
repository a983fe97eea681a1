package org.isopter.model.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.value.Outcome;

/**
 * What a fact says, put into words by a style, piece by piece: every wording of a fact is laid out
 * from these. A piece that the fact does not state, or that the style has no words for, is not
 * there.
 *
 * @param outcome the value itself, or why there is none
 * @param parts the parts of the value, in the order of the finding
 * @param context technique, instrument and a time of its own
 * @param remarks the remarks
 */
public record FactWords(
    List<String> outcome, List<String> parts, List<String> context, List<String> remarks) {

  public FactWords {
    outcome = List.copyOf(outcome);
    parts = List.copyOf(parts);
    context = List.copyOf(context);
    remarks = List.copyOf(remarks);
  }

  /** Returns the words for a fact in a style. */
  public static FactWords of(Fact<?> fact, FactStyle style) {
    List<String> outcome = new ArrayList<>();
    List<String> parts = new ArrayList<>();
    fact.outcome().ifAbsent().map(style::absent).ifPresent(outcome::add);
    fact.panel().ifPresent(value -> value(fact, value, style, outcome, parts));
    return new FactWords(stated(outcome), stated(parts), context(fact, style), fact.remarks());
  }

  private static void value(
      Fact<?> fact, EncodedValue value, FactStyle style, List<String> outcome, List<String> parts) {
    Optional<String> whole = fact.outcome().ifFound().flatMap(style::whole);
    if (whole.isPresent()) {
      outcome.add(whole.get());
      return;
    }
    Layout<?> layout = fact.finding().layout();
    if (value.notation().isPresent()) {
      // The written form of a choice covers the parts that only this alternative has.
      outcome.add(layout.writeChoice(value));
      layout.commonParts().forEach(part -> part(part, value, style, parts));
    } else {
      value.value().map(style::datum).ifPresent(outcome::add);
      value.parts().forEach((key, part) -> parts.add(style.part(key, words(part, style))));
    }
  }

  private static void part(
      Part<?, ?> part, EncodedValue value, FactStyle style, List<String> into) {
    Optional.ofNullable(value.parts().get(part.key()))
        .ifPresent(outcome -> into.add(style.part(part.key(), words(outcome, style))));
  }

  private static String words(Outcome<Datum> outcome, FactStyle style) {
    return outcome.fold(style::datum, style::absent);
  }

  private static List<String> context(Fact<?> fact, FactStyle style) {
    Stream<Optional<String>> pieces =
        Stream.of(
            fact.method().map(how -> style.technique(fact.finding(), how)),
            fact.device().map(style::device),
            fact.at().map(style::time));
    return stated(pieces.flatMap(Optional::stream).toList());
  }

  private static List<String> stated(List<String> pieces) {
    return pieces.stream().filter(piece -> !piece.isEmpty()).toList();
  }

  /** Returns the value with its parts, or why there is none. */
  public String value(String between) {
    return String.join(between, Stream.concat(outcome.stream(), parts.stream()).toList());
  }
}
