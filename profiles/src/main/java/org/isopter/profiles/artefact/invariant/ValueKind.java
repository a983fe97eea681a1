package org.isopter.profiles.artefact.invariant;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Collectors;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Span;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Unit;

/**
 * How a kind of value travels: its FHIR type, and the conditions, on whatever has the value, that
 * it is of this type and this unit or list, in range, and not too finely written.
 *
 * @param type the FHIR type
 * @param fits the condition that it has the type and one of the units or answers
 * @param unit the condition that a value of the type has one of the units; empty without units
 * @param range the condition that a value with the right unit is in range; empty without a range
 * @param decimals the condition on the digits behind the point; empty for what has none
 */
public record ValueKind(String type, String fits, String unit, String range, String decimals) {

  private static final Spec.Cases<ValueKind> OF = new OfSpec();

  public static ValueKind of(Spec spec) {
    return spec.fold(OF);
  }

  /** Returns the condition, on a quantity, that it has the unit. */
  public static String isIn(Unit unit) {
    return "(unit = " + Paths.text(unit.label()) + " and " + Paths.is(ucum(unit)) + ")";
  }

  public static Code ucum(Unit unit) {
    return new Code(Code.UCUM, unit.ucum(), unit.label());
  }

  private static final class OfSpec implements Spec.Cases<ValueKind> {

    private static final String QUANTITY = "value.ofType(Quantity)";
    private static final String RATIO = "value.ofType(Ratio)";

    @Override
    public ValueKind measure(Spec.Measure spec) {
      List<Span> spans = spec.spans();
      String units =
          spans.stream().map(Span::unit).map(ValueKind::isIn).collect(Collectors.joining(" or "));
      String ranges = spans.stream().map(OfSpec::inSpan).collect(Collectors.joining(" and "));
      return new ValueKind(
          "Quantity",
          QUANTITY + ".where(" + units + ").exists()",
          QUANTITY + ".all(" + units + ")",
          QUANTITY + ".all(" + ranges + ")",
          QUANTITY + ".value.all(" + digits(spec.decimals()) + ")");
    }

    @Override
    public ValueKind count(Spec.Count spec) {
      String within =
          compare("$this", ">=", BigDecimal.valueOf(spec.least()))
              + " and "
              + compare("$this", "<=", BigDecimal.valueOf(spec.most()));
      return new ValueKind(
          "integer",
          "value.ofType(integer).exists()",
          "",
          "value.ofType(integer).all(" + within + ")",
          "");
    }

    @Override
    public ValueKind coded(Spec.Coded spec) {
      return new ValueKind("CodeableConcept", Paths.valueIn(codes(spec.answers())), "", "", "");
    }

    @Override
    public ValueKind truth(Spec.Truth spec) {
      return new ValueKind("boolean", "value.ofType(boolean).exists()", "", "", "");
    }

    @Override
    public ValueKind text(Spec.Text spec) {
      return new ValueKind("string", "value.ofType(string).exists()", "", "", "");
    }

    @Override
    public ValueKind ratio(Spec.Ratio spec) {
      String unit = isIn(spec.unit());
      String units = "numerator.all(" + unit + ") and denominator.all(" + unit + ")";
      String digits = "value.all(" + digits(spec.decimals()) + ")";
      String proper = spec.proper() ? " and numerator.value <= denominator.value" : "";
      return new ValueKind(
          "Ratio",
          RATIO + ".where(" + units + ").exists()",
          RATIO + ".all(" + units + ")",
          RATIO
              + ".all("
              + bounds("numerator.value", spec.numerator())
              + " and "
              + bounds("denominator.value", spec.denominator())
              + proper
              + ")",
          RATIO + ".all(numerator." + digits + " and denominator." + digits + ")");
    }

    private static String inSpan(Span span) {
      return "(" + isIn(span.unit()) + " implies (" + bounds("value", span) + "))";
    }

    private static String bounds(String path, Span span) {
      return compare(path, ">=", span.least()) + " and " + compare(path, "<=", span.most());
    }

    private static String compare(String path, String how, BigDecimal limit) {
      // Parentheses, for some engines take all that follows a minus as its operand.
      return "(" + path + " " + how + " " + limit.toPlainString() + ")";
    }

    private static String digits(int decimals) {
      String fraction = decimals == 0 ? "" : "([.][0-9]{1," + decimals + "})?";
      return "toString().matches('^-?[0-9]+" + fraction + "$')";
    }

    private static List<Code> codes(Answers answers) {
      return answers.concepts().stream().map(Concept::code).toList();
    }
  }
}
