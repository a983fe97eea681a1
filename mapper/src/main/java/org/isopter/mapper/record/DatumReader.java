package org.isopter.mapper.record;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.isopter.mapper.record.tree.Complaints;
import org.isopter.mapper.record.tree.Node;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.Span;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Unit;

/** Reads a single value as its spec says; whether it is in range is checked afterwards. */
public final class DatumReader implements Spec.Cases<Optional<Datum>> {

  private static final String NO_QUOTES = "write it without quotes";

  private final Node.Leaf leaf;
  private final Complaints complaints;

  private DatumReader(Node.Leaf leaf, Complaints complaints) {
    this.leaf = leaf;
    this.complaints = complaints;
  }

  /** Returns the datum, or nothing after a complaint. */
  static Optional<Datum> read(Spec spec, Node node, Complaints complaints) {
    if (!(node instanceof Node.Leaf leaf)) {
      return complaints.add(node, DatumTexts.wanted(spec), "");
    }
    return leaf.kind() == Node.Kind.NOTHING
        ? complaints.add(
            node, DatumTexts.wanted(spec), "leave the key out when there is nothing to say")
        : spec.fold(new DatumReader(leaf, complaints));
  }

  @Override
  public Optional<Datum> measure(Spec.Measure spec) {
    if (leaf.kind() == Node.Kind.NUMBER) {
      return bare(spec);
    }
    String text = leaf.text();
    int space = text.indexOf(' ');
    Optional<BigDecimal> number =
        space < 0 ? Optional.empty() : PlainNumber.of(text.substring(0, space));
    Optional<Unit> unit = Optional.empty();
    for (Span span : spec.spans()) {
      if (text.length() > space && text.substring(space + 1).equals(span.unit().text())) {
        unit = Optional.of(span.unit());
      }
    }
    if (number.isEmpty() || unit.isEmpty() || leaf.kind() != Node.Kind.TEXT) {
      return refuse(DatumTexts.wanted(spec), measureAdvice(spec));
    }
    return Optional.of(new Datum.Measure(number.get(), unit.get()));
  }

  private Optional<Datum> bare(Spec.Measure spec) {
    Optional<BigDecimal> number = PlainNumber.of(leaf.text());
    for (Span span : spec.spans()) {
      if (span.unit().text().isEmpty() && number.isPresent()) {
        return Optional.of(new Datum.Measure(number.get(), span.unit()));
      }
    }
    return refuse(
        DatumTexts.wanted(spec),
        number.isEmpty() ? "write plain digits with a point" : "name the unit: " + examples(spec));
  }

  private String examples(Spec.Measure spec) {
    List<String> examples = new ArrayList<>();
    for (Span span : spec.spans()) {
      examples.add('"' + leaf.text() + " " + span.unit().text() + '"');
    }
    return String.join(" or ", examples);
  }

  private String measureAdvice(Spec.Measure spec) {
    String squeezed = squeeze(leaf.text());
    for (Span span : spec.spans()) {
      String unit = span.unit().text();
      if (squeezed.endsWith(squeeze(unit))) {
        String digits = squeezed.substring(0, squeezed.length() - squeeze(unit).length());
        if (PlainNumber.of(digits).isPresent()) {
          return unit.isEmpty()
              ? "write it without quotes: " + digits
              : "write \"" + digits + " " + unit + '"';
        }
      }
    }
    return PlainNumber.of(squeezed).isPresent() ? "name the unit: " + examples(spec) : "";
  }

  /** Brings a number with a unit to the form that slips of the hand leave alone. */
  private static String squeeze(String text) {
    StringBuilder kept = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == ',') {
        kept.append('.');
      } else if (c == '\u2212') {
        kept.append('-');
      } else if (!Character.isWhitespace(c)) {
        kept.append(c);
      }
    }
    return kept.toString().toLowerCase(Locale.ROOT);
  }

  @Override
  public Optional<Datum> count(Spec.Count spec) {
    Optional<Integer> count = PlainNumber.whole(leaf.text());
    if (leaf.kind() == Node.Kind.NUMBER && count.isPresent()) {
      return Optional.of(new Datum.Count(count.get()));
    }
    return refuse(DatumTexts.wanted(spec), count.isPresent() ? NO_QUOTES : "");
  }

  @Override
  public Optional<Datum> coded(Spec.Coded spec) {
    Optional<Concept> concept = leaf.as(Node.Kind.TEXT).flatMap(spec.answers()::byWord);
    if (concept.isPresent()) {
      return concept.map(Datum.Coded::new);
    }
    List<String> words = spec.answers().concepts().stream().map(Concept::word).toList();
    boolean quotes = leaf.kind() != Node.Kind.TEXT && words.contains(leaf.text());
    return refuse(
        spec.answers().choices(),
        quotes
            ? "put it in quotes: \"" + leaf.text() + '"'
            : Scalars.wordAdvice(leaf.text(), words));
  }

  @Override
  public Optional<Datum> truth(Spec.Truth spec) {
    if (leaf.kind() == Node.Kind.TRUTH) {
      return Optional.of(new Datum.Truth(leaf.text().equals("true")));
    }
    return refuse(
        DatumTexts.wanted(spec),
        switch (leaf.text().toLowerCase(Locale.ROOT)) {
          case "yes" -> "write true";
          case "no" -> "write false";
          case "true", "false" -> NO_QUOTES;
          default -> "";
        });
  }

  @Override
  public Optional<Datum> text(Spec.Text spec) {
    return new Scalars(complaints).quoted(leaf, DatumTexts.wanted(spec)).map(Datum.Text::new);
  }

  @Override
  public Optional<Datum> ratio(Spec.Ratio spec) {
    String unit = spec.unit().text().isEmpty() ? "" : " " + spec.unit().text();
    String text = leaf.text();
    int slash = text.indexOf('/');
    if (leaf.kind() != Node.Kind.TEXT || slash < 0 || !text.endsWith(unit)) {
      return refuse(DatumTexts.wanted(spec), unit.isEmpty() ? "" : "its unit is" + unit);
    }
    String second = text.substring(slash + 1, text.length() - unit.length());
    Optional<BigDecimal> numerator = PlainNumber.of(text.substring(0, slash));
    Optional<BigDecimal> denominator = PlainNumber.of(second);
    return numerator.isPresent() && denominator.isPresent()
        ? Optional.of(new Datum.Ratio(numerator.get(), denominator.get(), spec.unit()))
        : refuse(
            DatumTexts.wanted(spec),
            "write two numbers with a stroke and no spaces, such as 13/15");
  }

  private Optional<Datum> refuse(String wanted, String advice) {
    return complaints.add(leaf, wanted, advice);
  }
}
