package org.isopter.model.wire;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Collectors;

/** Prints tests and paths as FHIRPath. */
public final class FhirPath implements Test.Cases<String>, ElementPath.Steps<String> {

  private static final FhirPath PRINTER = new FhirPath();

  private FhirPath() {}

  /** Returns the test as FHIRPath. */
  public static String of(Test test) {
    return test.fold(PRINTER);
  }

  /** Returns the path as FHIRPath. */
  public static String of(ElementPath path) {
    return path.steps().isEmpty()
        ? "$this"
        : path.steps().stream().map(step -> step.fold(PRINTER)).collect(Collectors.joining("."));
  }

  @Override
  public String child(ElementPath.Child step) {
    return step.name();
  }

  @Override
  public String ofType(ElementPath.OfType step) {
    return "ofType(" + step.type() + ")";
  }

  @Override
  public String where(ElementPath.Where step) {
    return "where(" + of(step.test()) + ")";
  }

  @Override
  public String exists(Test.Exists test) {
    return of(test.path()) + ".exists()";
  }

  @Override
  public String missing(Test.Missing test) {
    return of(test.path()) + ".empty()";
  }

  @Override
  public String every(Test.Every test) {
    return of(test.path()) + ".all(" + of(test.test()) + ")";
  }

  @Override
  public String and(Test.And test) {
    return joined(test.tests(), " and ");
  }

  @Override
  public String or(Test.Or test) {
    return joined(test.tests(), " or ");
  }

  @Override
  public String implies(Test.Implies test) {
    return of(test.when()) + " implies " + of(test.then());
  }

  @Override
  public String same(Test.Same test) {
    return of(test.first()) + (test.same() ? " = " : " != ") + of(test.second());
  }

  @Override
  public String group(Test.Group test) {
    return "(" + of(test.test()) + ")";
  }

  @Override
  public String is(Test.Is test) {
    return of(test.path()) + " = '" + test.text().replace("\\", "\\\\").replace("'", "\\'") + "'";
  }

  @Override
  public String atLeast(Test.AtLeast test) {
    return compared(test.path(), ">=", test.limit());
  }

  @Override
  public String atMost(Test.AtMost test) {
    return compared(test.path(), "<=", test.limit());
  }

  @Override
  public String notAbove(Test.NotAbove test) {
    return of(test.path()) + " <= " + of(test.limit());
  }

  @Override
  public String decimals(Test.Decimals test) {
    String fraction = test.most() == 0 ? "" : "([.][0-9]{1," + test.most() + "})?";
    return "toString().matches('^-?[0-9]+" + fraction + "$')";
  }

  private static String joined(List<Test> tests, String word) {
    return tests.stream().map(FhirPath::of).collect(Collectors.joining(word));
  }

  private static String compared(ElementPath path, String how, BigDecimal limit) {
    // Parentheses, for some engines take all that follows a minus as its operand.
    return "(" + of(path) + " " + how + " " + limit.toPlainString() + ")";
  }
}
