package org.isopter.model.drawing;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.clinical.acuity.PartialLine;
import org.isopter.model.clinical.acuity.RetestLimit;
import org.isopter.model.clinical.pressure.PressureRetest;
import org.isopter.model.compare.Comparison;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Measurement;
import org.isopter.model.finding.Finding;
import org.isopter.model.text.FactText;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/** Acuity at distance, pressure and colour plates of one person over several examinations. */
public final class Trend {

  private static final List<Finding<?>> FINDINGS =
      List.of(Acuities.DISTANCE, Pressures.INTRAOCULAR, Colours.PLATES);

  private Trend() {}

  /**
   * Returns a picture of each finding that was measured in the same way at two examinations or
   * more.
   *
   * @param exams the examinations of one person, in any order
   */
  public static List<Picture> of(List<Exam> exams) {
    List<Exam> inOrder = new ArrayList<>(exams);
    inOrder.sort(Comparator.comparing(exam -> exam.header().performed()));
    List<Picture> pictures = new ArrayList<>();
    for (Finding<?> finding : FINDINGS) {
      List<TrendLine> lines = lines(inOrder, finding);
      if (lines.stream().anyMatch(line -> line.points().size() > 1)) {
        pictures.add(TrendPicture.of(finding, lines));
      }
    }
    return pictures;
  }

  /** Returns a line for each eye and way of measuring. */
  private static List<TrendLine> lines(List<Exam> exams, Finding<?> finding) {
    Map<Measurement, List<Fact<?>>> facts = new LinkedHashMap<>();
    Map<Measurement, List<TrendLine.Point>> points = new LinkedHashMap<>();
    for (Exam exam : exams) {
      for (Fact<?> fact : exam.view().facts(finding).toList()) {
        Measurement measured = Measurement.of(fact).anyTime();
        facts.computeIfAbsent(measured, any -> new ArrayList<>()).add(fact);
        points.computeIfAbsent(measured, any -> new ArrayList<>()).add(point(exam, fact));
      }
    }
    List<TrendLine> lines = new ArrayList<>();
    points.forEach(
        (measured, some) ->
            lines.add(
                new TrendLine(
                    measured, some, limit(measured, facts.getOrDefault(measured, List.of())))));
    return lines;
  }

  private static TrendLine.Point point(Exam exam, Fact<?> fact) {
    return new TrendLine.Point(
        fact.at().orElse(exam.header().performed()),
        number(fact),
        FactText.of(fact, exam.header().performed()));
  }

  /** Returns the number to draw; nothing where there is none, as of counting fingers. */
  private static Optional<BigDecimal> number(Fact<?> fact) {
    Optional<?> found = fact.outcome().ifFound();
    if (found.isEmpty()) {
      return Optional.empty();
    }
    if (found.get() instanceof AcuityReading reading) {
      return PartialLine.logMar(reading).value();
    }
    if (found.get() instanceof Colours.Plates plates) {
      return Optional.of(BigDecimal.valueOf(100L * plates.correct() / plates.shown()));
    }
    return found
        .filter(Quantity.class::isInstance)
        .map(Quantity.class::cast)
        .filter(pressure -> pressure.unit().equals(Unit.MM_HG))
        .map(Quantity::value);
  }

  /** Returns the published limit, where one is carried here. */
  private static Optional<TrendBand> limit(Measurement measured, List<Fact<?>> facts) {
    return measured.finding().equals(Pressures.INTRAOCULAR)
        ? measured.technique().flatMap(PressureRetest::of).map(TrendBand::of)
        : acuity(facts).map(TrendBand::of);
  }

  /** Of several limits of acuity the widest counts. */
  private static Optional<RetestLimit> acuity(List<Fact<?>> facts) {
    List<AcuityReading> readings =
        facts.stream()
            .flatMap(fact -> fact.outcome().ifFound().stream())
            .filter(AcuityReading.class::isInstance)
            .map(AcuityReading.class::cast)
            .toList();
    return readings.stream()
        .map(reading -> Comparison.limit(readings.get(0), reading))
        .max(Comparator.comparing(RetestLimit::most));
  }
}
