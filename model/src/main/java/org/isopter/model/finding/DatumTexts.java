package org.isopter.model.finding;

import java.util.stream.Collectors;
import org.isopter.model.value.Unit;

/** The words for a datum and for what a spec wants, shared by messages, records and pages. */
public final class DatumTexts {

  private static final Datum.Cases<String> WRITER =
      new Datum.Cases<>() {
        @Override
        public String measure(Datum.Measure measure) {
          String unit = measure.unit().text();
          // Lens powers carry their sign even when it is plus (common practice, no source).
          boolean plus = measure.unit().equals(Unit.DIOPTRE) && measure.value().signum() >= 0;
          String digits = (plus ? "+" : "") + measure.value().toPlainString();
          return digits + (unit.isEmpty() ? "" : " " + unit);
        }

        @Override
        public String count(Datum.Count count) {
          return Integer.toString(count.value());
        }

        @Override
        public String coded(Datum.Coded coded) {
          return coded.concept().word();
        }

        @Override
        public String truth(Datum.Truth truth) {
          return truth.value() ? "yes" : "no";
        }

        @Override
        public String text(Datum.Text text) {
          return text.value();
        }

        @Override
        public String ratio(Datum.Ratio ratio) {
          String unit = ratio.unit().text();
          return ratio.numerator().toPlainString()
              + "/"
              + ratio.denominator().toPlainString()
              + (unit.isEmpty() ? "" : " " + unit);
        }
      };

  private static final Spec.Cases<String> WANTED =
      new Spec.Cases<>() {
        @Override
        public String measure(Spec.Measure spec) {
          return spec.spans().stream().map(Span::toString).collect(Collectors.joining(" or "));
        }

        @Override
        public String count(Spec.Count spec) {
          return "a whole number from " + spec.least() + " to " + spec.most();
        }

        @Override
        public String coded(Spec.Coded spec) {
          return spec.answers().choices();
        }

        @Override
        public String truth(Spec.Truth spec) {
          return "true or false";
        }

        @Override
        public String text(Spec.Text spec) {
          return "text of at most " + spec.longest() + " characters, not blank";
        }

        @Override
        public String ratio(Spec.Ratio spec) {
          String bound = spec.proper() ? ", the first not above the second" : "";
          return "a fraction of " + spec.numerator() + " over " + spec.denominator() + bound;
        }
      };

  private DatumTexts() {}

  /** Returns the datum as a record writes it, for instance {@code 14 mmHg} or {@code brisk}. */
  public static String of(Datum datum) {
    return datum.fold(WRITER);
  }

  /** Returns what the spec wants, in words for a message. */
  public static String wanted(Spec spec) {
    return spec.fold(WANTED);
  }
}
