package org.isopter.task.calculate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.isopter.model.clinical.field.FieldStage;
import org.isopter.model.clinical.field.PerimetryFlag;
import org.isopter.model.clinical.field.PerimetryIndex;
import org.isopter.model.clinical.impairment.DrivingVision;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/** What published limits say of a visual field, or of the test that it was found with. */
final class FieldCalculations {

  private static final List<String> ERRORS =
      List.of("fixation-losses", "false-positives", "false-negatives");
  private static final List<String> DEFECTS = List.of("defect", "no-defect");

  private FieldCalculations() {}

  static Result<List<Statement>> stage(List<String> values) {
    return BedsideValues.number(values.get(0))
        .map(
            deviation ->
                Arrays.stream(FieldStage.values())
                    .map(rule -> rule.of(deviation).statement())
                    .toList());
  }

  /** Holds wrong answers of a kind against every limit of that kind; each maker has its own. */
  static Result<List<Statement>> reliability(List<String> values) {
    String kind = values.get(0);
    if (!ERRORS.contains(kind)) {
      return Result.refused(Fault.of("", kind, "one of " + String.join(", ", ERRORS)));
    }
    return BedsideValues.count(values.get(1))
        .flatMap(
            errors -> BedsideValues.count(values.get(2)).flatMap(all -> flags(kind, errors, all)));
  }

  private static Result<List<Statement>> flags(String kind, int errors, int trials) {
    Result<List<Statement>> statements = Result.ok(List.of());
    for (PerimetryFlag flag : PerimetryFlag.values()) {
      if (Concept.word(flag).startsWith(kind)) {
        statements =
            statements.flatMap(
                before ->
                    flag.of(errors, trials).map(answer -> joined(before, answer.statement())));
      }
    }
    return statements;
  }

  private static List<Statement> joined(List<Statement> before, Statement next) {
    List<Statement> all = new ArrayList<>(before);
    all.add(next);
    return List.copyOf(all);
  }

  static Result<List<Statement>> threshold(List<String> values) {
    return BedsideValues.number(values.get(0))
        .map(decibels -> List.of(PerimetryFlag.highThreshold(decibels).statement()));
  }

  static Result<List<Statement>> index(List<String> values) {
    List<PerimetryIndex> all = Arrays.asList(PerimetryIndex.values());
    String words = all.stream().map(Concept::word).collect(Collectors.joining(", "));
    return all.stream()
        .filter(index -> Concept.word(index).equals(values.get(0)))
        .findFirst()
        .map(index -> BedsideValues.number(values.get(1)).flatMap(index::of).map(List::of))
        .orElseGet(() -> Result.refused(Fault.of("", values.get(0), "one of " + words)));
  }

  /** Holds the field of both eyes together against what driving rules print of it. */
  static Result<List<Statement>> driving(List<String> values) {
    String defect = values.get(4);
    if (!DEFECTS.contains(defect)) {
      return Result.refused(Fault.of("", defect, "one of " + String.join(", ", DEFECTS)));
    }
    List<Integer> degrees = new ArrayList<>();
    for (String value : values.subList(0, 4)) {
      Result<Integer> one = BedsideValues.degrees(value);
      if (!one.isOk()) {
        return Result.refused(one.faults());
      }
      degrees.add(one.orThrow());
    }
    return Result.ok(figures(extent(degrees, defect.equals("defect"))));
  }

  private static DrivingVision.Extent extent(List<Integer> degrees, boolean defect) {
    int left = degrees.get(0);
    int right = degrees.get(1);
    return new DrivingVision.Extent(
        left + right, left, right, degrees.get(2), degrees.get(3), defect);
  }

  private static List<Statement> figures(DrivingVision.Extent field) {
    return Arrays.stream(DrivingVision.FieldRule.values())
        .map(rule -> DrivingVision.field(rule, field).statement())
        .toList();
  }
}
