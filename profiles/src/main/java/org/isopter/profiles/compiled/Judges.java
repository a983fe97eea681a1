package org.isopter.profiles.compiled;

import java.math.BigDecimal;
import java.util.List;
import java.util.function.BinaryOperator;
import java.util.function.IntPredicate;
import java.util.regex.Pattern;
import org.isopter.model.wire.ElementPath;
import org.isopter.model.wire.Test;

/** Compiles tests. */
final class Judges implements Test.Cases<Judges.Judge> {

  private static final Judges CASES = new Judges();

  private Judges() {}

  /** Says whether an item passes a test. */
  interface Judge {
    /** Returns whether the item passes. */
    Ternary judge(Item item);
  }

  static Judge of(Test test) {
    return test.fold(CASES);
  }

  @Override
  public Judge exists(Test.Exists test) {
    Walks.Walk walk = Walks.of(test.path());
    return item -> Ternary.of(walk.any(item, each -> true));
  }

  @Override
  public Judge missing(Test.Missing test) {
    Walks.Walk walk = Walks.of(test.path());
    return item -> Ternary.of(!walk.any(item, each -> true));
  }

  @Override
  public Judge every(Test.Every test) {
    Walks.Walk walk = Walks.of(test.path());
    Judge each = of(test.test());
    return item -> Ternary.of(!walk.any(item, found -> each.judge(found) != Ternary.YES));
  }

  @Override
  public Judge and(Test.And test) {
    return joined(test.tests(), Ternary::and, Ternary.NO);
  }

  @Override
  public Judge or(Test.Or test) {
    return joined(test.tests(), Ternary::or, Ternary.YES);
  }

  @Override
  public Judge implies(Test.Implies test) {
    Judge when = of(test.when());
    Judge then = of(test.then());
    return item -> {
      Ternary first = when.judge(item);
      return first == Ternary.NO ? Ternary.YES : first.implies(then.judge(item));
    };
  }

  @Override
  public Judge same(Test.Same test) {
    Judge first = of(test.first());
    Judge second = of(test.second());
    return item -> {
      Ternary one = first.judge(item);
      Ternary other = second.judge(item);
      return one == Ternary.NOTHING || other == Ternary.NOTHING
          ? Ternary.NOTHING
          : Ternary.of((one == other) == test.same());
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
    return test.path().steps().size() == 1
            && test.path().steps().get(0) instanceof ElementPath.Child child
        ? member(Name.of(child.name()), wanted)
        : item -> is(walk.from(item), wanted);
  }

  private static Ternary is(List<Item> found, String wanted) {
    return found.isEmpty()
        ? Ternary.NOTHING
        : Ternary.of(found.size() == 1 && found.get(0).text().equals(wanted));
  }

  /** The same for members of an item, without a list of them. */
  private static Judge member(Name name, String wanted) {
    return item -> is(item, name, wanted);
  }

  private static Ternary is(Item item, Name name, String wanted) {
    int found = 0;
    boolean same = false;
    for (Item each : item.members()) {
      if (each.isCalled(name)) {
        found++;
        same = each.text().equals(wanted);
      }
    }
    return found == 0 ? Ternary.NOTHING : Ternary.of(found == 1 && same);
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
          ? Ternary.NOTHING
          : compared(first.from(item), number(limit.get(0)), order -> order <= 0);
    };
  }

  @Override
  public Judge decimals(Test.Decimals test) {
    String fraction = test.most() == 0 ? "" : "([.][0-9]{1," + test.most() + "})?";
    Pattern digits = Pattern.compile("-?[0-9]+" + fraction);
    return item -> Ternary.of(digits.matcher(item.text()).matches());
  }

  /** Joins tests; one that comes out as the last word makes those behind it needless. */
  private static Judge joined(List<Test> tests, BinaryOperator<Ternary> join, Ternary last) {
    return tests.stream()
        .map(Judges::of)
        .reduce((a, b) -> item -> joined(a.judge(item), b, item, join, last))
        .orElseThrow();
  }

  private static Ternary joined(
      Ternary first, Judge second, Item item, BinaryOperator<Ternary> join, Ternary last) {
    return first == last ? last : join.apply(first, second.judge(item));
  }

  private static Judge compared(ElementPath path, BigDecimal limit, IntPredicate order) {
    Walks.Walk walk = Walks.of(path);
    return item -> compared(walk.from(item), limit, order);
  }

  private static Ternary compared(List<Item> found, BigDecimal limit, IntPredicate order) {
    return found.isEmpty()
        ? Ternary.NOTHING
        : Ternary.of(order.test(number(found.get(0)).compareTo(limit)));
  }

  private static BigDecimal number(Item item) {
    return new BigDecimal(item.text());
  }
}
