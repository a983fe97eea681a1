package org.isopter.profiles.compiled;

import java.math.BigDecimal;
import java.util.List;
import java.util.function.BinaryOperator;
import java.util.function.IntPredicate;
import java.util.regex.Pattern;
import org.isopter.model.wire.Path;
import org.isopter.model.wire.Test;

/** Compiles tests. */
final class Judges implements Test.Cases<Judges.Judge> {

  private static final Judges CASES = new Judges();

  private Judges() {}

  /** Says whether an item passes a test. */
  interface Judge {
    /** Returns whether the item passes. */
    Truth judge(Item item);
  }

  static Judge of(Test test) {
    return test.fold(CASES);
  }

  @Override
  public Judge exists(Test.Exists test) {
    Walks.Walk walk = Walks.of(test.path());
    return item -> Truth.of(!walk.from(item).isEmpty());
  }

  @Override
  public Judge missing(Test.Missing test) {
    Walks.Walk walk = Walks.of(test.path());
    return item -> Truth.of(walk.from(item).isEmpty());
  }

  @Override
  public Judge every(Test.Every test) {
    Walks.Walk walk = Walks.of(test.path());
    Judge each = of(test.test());
    return item -> Truth.of(walk.from(item).stream().allMatch(x -> each.judge(x) == Truth.YES));
  }

  @Override
  public Judge and(Test.And test) {
    return joined(test.tests(), Truth::and);
  }

  @Override
  public Judge or(Test.Or test) {
    return joined(test.tests(), Truth::or);
  }

  @Override
  public Judge implies(Test.Implies test) {
    Judge when = of(test.when());
    Judge then = of(test.then());
    return item -> when.judge(item).implies(then.judge(item));
  }

  @Override
  public Judge same(Test.Same test) {
    Judge first = of(test.first());
    Judge second = of(test.second());
    return item -> {
      Truth one = first.judge(item);
      Truth other = second.judge(item);
      return one == Truth.NOTHING || other == Truth.NOTHING
          ? Truth.NOTHING
          : Truth.of((one == other) == test.same());
    };
  }

  @Override
  public Judge group(Test.Group test) {
    return of(test.test());
  }

  @Override
  public Judge is(Test.Is test) {
    Walks.Walk walk = Walks.of(test.path());
    String wanted = test.text();
    return item -> {
      List<Item> found = walk.from(item);
      return found.isEmpty()
          ? Truth.NOTHING
          : Truth.of(found.size() == 1 && found.get(0).text().equals(wanted));
    };
  }

  @Override
  public Judge atLeast(Test.AtLeast test) {
    return compared(test.path(), test.limit(), order -> order >= 0);
  }

  @Override
  public Judge atMost(Test.AtMost test) {
    return compared(test.path(), test.limit(), order -> order <= 0);
  }

  @Override
  public Judge notAbove(Test.NotAbove test) {
    Walks.Walk first = Walks.of(test.path());
    Walks.Walk second = Walks.of(test.limit());
    return item -> {
      List<Item> limit = second.from(item);
      return limit.isEmpty()
          ? Truth.NOTHING
          : compared(first.from(item), number(limit.get(0)), order -> order <= 0);
    };
  }

  @Override
  public Judge decimals(Test.Decimals test) {
    String fraction = test.most() == 0 ? "" : "([.][0-9]{1," + test.most() + "})?";
    Pattern digits = Pattern.compile("-?[0-9]+" + fraction);
    return item -> Truth.of(digits.matcher(item.text()).matches());
  }

  private static Judge joined(List<Test> tests, BinaryOperator<Truth> join) {
    return tests.stream()
        .map(Judges::of)
        .reduce((a, b) -> item -> join.apply(a.judge(item), b.judge(item)))
        .orElseThrow();
  }

  private static Judge compared(Path path, BigDecimal limit, IntPredicate order) {
    Walks.Walk walk = Walks.of(path);
    return item -> compared(walk.from(item), limit, order);
  }

  private static Truth compared(List<Item> found, BigDecimal limit, IntPredicate order) {
    return found.isEmpty()
        ? Truth.NOTHING
        : Truth.of(order.test(number(found.get(0)).compareTo(limit)));
  }

  private static BigDecimal number(Item item) {
    return new BigDecimal(item.text());
  }
}
