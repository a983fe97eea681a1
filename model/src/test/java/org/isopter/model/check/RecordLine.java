package org.isopter.model.check;

import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Variant;
import org.isopter.model.text.RecordText;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;

/**
 * Reads back the words of a record for a fact of measured values, for instance {@code right
 * blind-spot (nasal-edge 12.5 deg, method perimetry)}, or of a choice of notations.
 */
final class RecordLine {

  private static final Pattern FORM = Pattern.compile("(\\S+) (\\S+)(?: ([^(]+?))? ?\\((.*)\\)");

  private final Finding<?> finding;
  private final Variant variant;
  private final Map<String, Outcome<Datum>> parts = new LinkedHashMap<>();
  private Optional<Concept> method = Optional.empty();
  private Optional<OffsetDateTime> at = Optional.empty();

  private RecordLine(Finding<?> finding) {
    this.finding = finding;
    this.variant =
        finding
            .layout()
            .variant(Optional.empty())
            .orElseGet(() -> finding.layout().variants().get(0));
  }

  static Fact<?> fact(String text) {
    Matcher form = FORM.matcher(text);
    if (!form.matches()) {
      throw new IllegalArgumentException("no words of a record: " + text);
    }
    RecordLine line = new RecordLine(Catalogue.standard().byId(form.group(2)).orElseThrow());
    for (String detail : form.group(4).split(", ", -1)) {
      line.detail(detail.substring(0, detail.indexOf(' ')), after(detail));
    }
    Fact<?> fact = line.fact(site(form.group(1)), Optional.ofNullable(form.group(3)));
    if (!RecordText.of(fact).equals(text)) {
      throw new IllegalArgumentException(text + " was read as " + RecordText.of(fact));
    }
    return fact;
  }

  private static Site site(String word) {
    return Arrays.stream(Site.values())
        .filter(site -> site.word().equals(word))
        .findFirst()
        .orElseThrow();
  }

  private static String after(String detail) {
    return detail.substring(detail.indexOf(' ') + 1);
  }

  private void detail(String key, String text) {
    switch (key) {
      case "method" -> method = Optional.of(method(text));
      case "at" -> at = Optional.of(OffsetDateTime.parse(text));
      default ->
          parts.put(
              key,
              Outcome.found(
                  datum(
                      variant.parts().stream()
                          .filter(part -> part.key().equals(key))
                          .findFirst()
                          .orElseThrow()
                          .spec(),
                      text)));
    }
  }

  private Concept method(String word) {
    return finding.methods().orElseThrow().concepts().stream()
        .filter(one -> one.word().equals(word))
        .findFirst()
        .orElseThrow();
  }

  private Fact<?> fact(Site site, Optional<String> value) {
    return Fact.decode(finding, site, panel(value)).orThrow().with(method, at, Optional.empty());
  }

  private EncodedValue panel(Optional<String> value) {
    if (finding.layout().choice().isPresent()) {
      EncodedValue others = new EncodedValue(Optional.empty(), Optional.empty(), parts);
      return finding.layout().readChoice(value.orElseThrow(), others).orThrow().with(parts);
    }
    Optional<Datum> datum = value.map(text -> datum(variant.value().orElseThrow(), text));
    return new EncodedValue(Optional.empty(), datum, parts);
  }

  private static Datum datum(Spec spec, String text) {
    if (spec instanceof Spec.Coded coded) {
      return new Datum.Coded(
          coded.answers().concepts().stream()
              .filter(one -> one.word().equals(text))
              .findFirst()
              .orElseThrow());
    }
    int space = text.indexOf(' ');
    return ((Spec.Measure) spec)
        .spans().stream()
            .filter(span -> span.unit().text().equals(text.substring(space + 1)))
            .<Datum>map(
                span -> new Datum.Measure(new BigDecimal(text.substring(0, space)), span.unit()))
            .findFirst()
            .orElseThrow();
  }
}
