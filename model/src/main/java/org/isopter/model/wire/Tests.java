package org.isopter.model.wire;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import org.isopter.model.value.Code;
import org.isopter.model.value.Unit;

/** The pieces that the tests of our rules are put together from. */
public final class Tests {

  static final ElementPath VALUE = ElementPath.of("value");
  static final ElementPath COMPONENT_CODES = ElementPath.of("component", "code", "coding");

  private Tests() {}

  /** Returns the test, on a coding or a quantity, that it has this code. */
  public static Test is(Code code) {
    return and(
        new Test.Is(ElementPath.of("system"), code.system()),
        new Test.Is(ElementPath.of("code"), code.code()));
  }

  /** Returns the test, on a quantity, that its code is that of the unit; its text is free. */
  static Test isIn(Unit unit) {
    return new Test.Group(is(ValueForm.ucum(unit)));
  }

  /** Returns the test that what a path leads to is a concept with one of these codes. */
  public static Test codedAs(ElementPath concept, Collection<Code> codes) {
    return concept.to("coding").where(new Test.Or(codes.stream().map(Tests::is).toList())).exists();
  }

  /** Returns the path, on an observation, to the component under this code. */
  public static ElementPath component(Code code) {
    return ElementPath.of("component").where(codedAs(ElementPath.of("code"), List.of(code)));
  }

  /** Returns the test that whatever the path leads to has one of these codes as its value. */
  public static Test valueIn(ElementPath holder, Collection<Code> codes) {
    return codedAs(holder.to("value").ofType(ValueType.CONCEPT.type()), codes);
  }

  /** Returns the test that is passed by a fact without a value as well. */
  static Test unlessAbsent(Test... tests) {
    Test[] all = new Test[tests.length + 1];
    all[0] = ElementPath.of("dataAbsentReason").exists();
    System.arraycopy(tests, 0, all, 1, tests.length);
    return new Test.Or(Arrays.asList(all));
  }

  static Test and(Test... tests) {
    return new Test.And(Arrays.asList(tests));
  }

  static Test implies(Test when, Test then) {
    return new Test.Implies(when, then);
  }
}
