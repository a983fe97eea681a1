package org.isopter.profiles.compiled;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.stream.Collectors;
import org.isopter.model.value.Code;
import org.isopter.model.wire.Condition;

/** Compiles conditions. */
final class ConditionChecks implements Condition.Cases<Check> {

  private static final ConditionChecks CASES = new ConditionChecks();

  private ConditionChecks() {}

  static Check of(Condition condition) {
    return condition.fold(CASES);
  }

  @Override
  public Check pattern(Condition.Pattern condition) {
    return Patterns.of(condition.fixed()).check();
  }

  @Override
  public Check bound(Condition.Bound condition) {
    CodeSet codes = new CodeSet(condition.codes());
    String wanted = words(condition.codes());
    return (item, report) -> {
      if (codes.holds(item)) {
        return;
      }
      if (condition.extensible() || isWithoutCode(item)) {
        report.doubt(item, "none of the codes");
      } else {
        report.wrong(item, "saw " + SeenWords.of(item) + ", wanted one of: " + wanted);
      }
    };
  }

  /** Returns the codes in words, those of a code system together, as a value set has them. */
  private static String words(List<Code> codes) {
    return codes.stream()
        .collect(Collectors.groupingBy(Code::system, LinkedHashMap::new, Collectors.toList()))
        .values()
        .stream()
        .flatMap(List::stream)
        .map(code -> code.code() + " " + code.display())
        .collect(Collectors.joining(", "));
  }

  /** Of text alone, or of a code that names no system, the reference says more than we can. */
  private static boolean isWithoutCode(Item item) {
    return item.type().equals("CodeableConcept")
        && item.members("coding").stream()
            .allMatch(each -> each.text("system").isEmpty() || each.text("code").isEmpty());
  }

  @Override
  public Check oneOfTypes(Condition.OneOfTypes condition) {
    String wanted = String.join(", ", condition.types());
    return (item, report) -> {
      if (!condition.types().contains(item.type())) {
        report.wrong(item, "saw a value of type " + item.type() + ", wanted " + wanted);
      }
    };
  }

  @Override
  public Check longest(Condition.Longest condition) {
    return (item, report) -> {
      if (item.text().length() > condition.characters()) {
        report.wrong(
            item,
            "saw %d characters, wanted at most %d"
                .formatted(item.text().length(), condition.characters()));
      }
    };
  }

  @Override
  public Check rule(Condition.Rule condition) {
    Judges.Judge judge = Judges.of(condition.test());
    List<Walks.Walk> seen = condition.seen().stream().map(Walks::of).toList();
    return (item, report) -> {
      if (judge.judge(item) != Ternary.YES) {
        String words =
            seen.stream()
                .map(walk -> SeenWords.of(walk.from(item)))
                .collect(Collectors.joining(" beside "));
        report.wrong(item, condition.key() + ": saw " + words + ", wanted: " + condition.human());
      }
    };
  }
}
