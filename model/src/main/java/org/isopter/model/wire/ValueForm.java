package org.isopter.model.wire;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Span;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Unit;

/**
 * How a kind of value travels: the tests, on whatever has the value, that it is of its type and of
 * this unit or list, in range, and not too finely written.
 *
 * @param fits the test that it has the type and one of the units or answers
 * @param unit the test that a value of the type has one of the units; empty without units
 * @param range the test that a value with the right unit is in range; empty without a range
 * @param decimals the test on the digits behind the point; empty for what has none
 */
public record ValueForm(
    Test fits, Optional<Test> unit, Optional<Test> range, Optional<Test> decimals) {

  private static final Spec.Cases<ValueForm> OF = new OfSpec();

  /** Returns the form of the values of a spec. */
  public static ValueForm of(Spec spec) {
    return spec.fold(OF);
  }

  /** Returns the code of a unit. */
  public static Code ucum(Unit unit) {
    return new Code(Code.UCUM, unit.ucum(), unit.label());
  }

  private static ValueForm plain(Test fits) {
    return new ValueForm(fits, Optional.empty(), Optional.empty(), Optional.empty());
  }

  private static ElementPath value(Spec spec) {
    return Tests.VALUE.ofType(ValueType.of(spec).type());
  }

  private static final class OfSpec implements Spec.Cases<ValueForm> {

    @Override
    public ValueForm measure(Spec.Measure spec) {
      ElementPath quantity = value(spec);
      List<Span> spans = spec.spans();
      Test units = new Test.Or(spans.stream().map(span -> Tests.isIn(span.unit())).toList());
      Test ranges = new Test.And(spans.stream().map(OfSpec::inSpan).toList());
      return new ValueForm(
          quantity.where(units).exists(),
          Optional.of(new Test.Every(quantity, units)),
          Optional.of(new Test.Every(quantity, ranges)),
          Optional.of(new Test.Every(quantity.to("value"), new Test.Decimals(spec.decimals()))));
    }

    @Override
    public ValueForm count(Spec.Count spec) {
      ElementPath integer = value(spec);
      Test within =
          Tests.and(
              new Test.AtLeast(ElementPath.THIS, BigDecimal.valueOf(spec.least())),
              new Test.AtMost(ElementPath.THIS, BigDecimal.valueOf(spec.most())));
      return new ValueForm(
          integer.exists(),
          Optional.empty(),
          Optional.of(new Test.Every(integer, within)),
          Optional.empty());
    }

    @Override
    public ValueForm coded(Spec.Coded spec) {
      return plain(Tests.valueIn(ElementPath.THIS, codes(spec.answers())));
    }

    @Override
    public ValueForm truth(Spec.Truth spec) {
      return plain(value(spec).exists());
    }

    @Override
    public ValueForm text(Spec.Text spec) {
      return plain(value(spec).exists());
    }

    @Override
    public ValueForm ratio(Spec.Ratio spec) {
      ElementPath ratio = value(spec);
      Test units = both(ElementPath.THIS, Tests.isIn(spec.unit()));
      Test digits = both(ElementPath.of("value"), new Test.Decimals(spec.decimals()));
      return new ValueForm(
          ratio.where(units).exists(),
          Optional.of(new Test.Every(ratio, units)),
          Optional.of(new Test.Every(ratio, new Test.And(bounds(spec)))),
          Optional.of(new Test.Every(ratio, digits)));
    }

    /** The test of what a path leads to from numerator and from denominator. */
    private static Test both(ElementPath path, Test test) {
      return new Test.And(
          Stream.of("numerator", "denominator")
              .<Test>map(name -> new Test.Every(ElementPath.of(name).then(path), test))
              .toList());
    }

    private static List<Test> bounds(Spec.Ratio spec) {
      ElementPath numerator = ElementPath.of("numerator", "value");
      ElementPath denominator = ElementPath.of("denominator", "value");
      Stream<Test> proper =
          spec.proper() ? Stream.of(new Test.NotAbove(numerator, denominator)) : Stream.empty();
      return Stream.of(
              bounds(numerator, spec.numerator()).stream(),
              bounds(denominator, spec.denominator()).stream(),
              proper)
          .flatMap(tests -> tests)
          .toList();
    }

    private static Test inSpan(Span span) {
      Test within = new Test.Group(new Test.And(bounds(ElementPath.of("value"), span)));
      return new Test.Group(Tests.implies(Tests.isIn(span.unit()), within));
    }

    private static List<Test> bounds(ElementPath path, Span span) {
      return Arrays.asList(
          new Test.AtLeast(path, span.least()), new Test.AtMost(path, span.most()));
    }

    private static List<Code> codes(Answers answers) {
      return answers.concepts().stream().<Code>map(Concept::code).toList();
    }
  }
}
