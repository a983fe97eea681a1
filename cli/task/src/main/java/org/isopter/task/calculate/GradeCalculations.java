package org.isopter.task.calculate;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.model.clinical.fundus.RetinopathyLevel;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/** Published grades of what was found. */
final class GradeCalculations {

  private static final Pattern SIGN =
      Pattern.compile(
          "(none|microaneurysms|other|proliferation)|(haemorrhages|beading|irma)=([0-4])");
  private static final String SIGNS =
      "none, microaneurysms, other or proliferation, or haemorrhages=, beading= or irma= with the"
          + " number of quadrants from 0 to 4";

  private GradeCalculations() {}

  /** Grades signs of which each is named that is there; "none" stands for itself. */
  static Result<List<Statement>> retinopathy(List<String> values) {
    Map<String, Integer> seen = new HashMap<>();
    for (String value : values) {
      Matcher sign = SIGN.matcher(value);
      if (!sign.matches()) {
        return Result.refused(Fault.of("", value, SIGNS));
      }
      boolean plain = sign.group(1) != null;
      String word = plain ? sign.group(1) : sign.group(2);
      int count = plain ? 1 : Integer.parseInt(sign.group(3));
      if (seen.put(word, count) != null) {
        return Result.refused(Fault.of("", value + " after another " + word, "each sign once"));
      }
    }
    if (seen.containsKey("none") && seen.size() > 1) {
      return Result.refused(Fault.of("", String.join(" ", values), "none, or what is there"));
    }
    return Result.ok(List.of(RetinopathyLevel.of(signs(seen)).statement()));
  }

  private static RetinopathyLevel.Signs signs(Map<String, Integer> seen) {
    return new RetinopathyLevel.Signs(
        seen.containsKey("microaneurysms"),
        seen.containsKey("other"),
        seen.getOrDefault("haemorrhages", 0),
        seen.getOrDefault("beading", 0),
        seen.getOrDefault("irma", 0),
        seen.containsKey("proliferation"));
  }
}
