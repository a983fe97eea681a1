package org.isopter.task.calculate;

import java.util.List;
import org.isopter.model.clinical.lens.LensAnswers;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.value.Result;

/** Calculations of lenses and prisms. */
final class LensCalculations {

  private static final String DEGREES = "deg";

  private LensCalculations() {}

  static Result<List<Statement>> transpose(List<String> values) {
    return BedsideValues.lens(values.get(0))
        .map(
            lens ->
                List.of(
                    LensAnswers.transposed(lens).statement(),
                    LensAnswers.sphericalEquivalent(lens).statement(),
                    LensAnswers.powerVector(lens).statement()));
  }

  static Result<List<Statement>> vertex(List<String> values) {
    return BedsideValues.lens(values.get(0))
        .flatMap(
            lens ->
                BedsideValues.positive(values.get(1), "a vertex distance in mm, above 0")
                    .flatMap(mm -> LensAnswers.atCornea(lens, mm)))
        .map(answer -> List.of(answer.statement()));
  }

  static Result<List<Statement>> prism(List<String> values) {
    String text = values.get(0).strip();
    return text.endsWith(DEGREES)
        ? BedsideValues.number(text.substring(0, text.length() - DEGREES.length()).strip())
            .flatMap(LensAnswers::prismDioptres)
            .map(Answer::statement)
            .map(List::of)
        : BedsideValues.number(text).map(prism -> List.of(LensAnswers.degrees(prism).statement()));
  }
}
