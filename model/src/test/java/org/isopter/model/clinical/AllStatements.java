package org.isopter.model.clinical;

import static org.isopter.model.clinical.acuity.AcuityCasesTest.reading;
import static org.isopter.model.clinical.acuity.AcuityEquivalentsTest.read;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.DefectGrade;
import org.isopter.model.answer.pupil.PupilResponse;
import org.isopter.model.answer.sight.ColourTest;
import org.isopter.model.answer.sight.FieldResponse;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Colours.Plates;
import org.isopter.model.catalogue.Fields.BlindSpot;
import org.isopter.model.catalogue.Fields.Edge;
import org.isopter.model.clinical.acuity.AcuityChange;
import org.isopter.model.clinical.acuity.AcuityComparison;
import org.isopter.model.clinical.acuity.AcuityEquivalents;
import org.isopter.model.clinical.acuity.LowVisionConvention;
import org.isopter.model.clinical.acuity.NearAcuity;
import org.isopter.model.clinical.acuity.PartialLine;
import org.isopter.model.clinical.acuity.PinholeComparison;
import org.isopter.model.clinical.acuity.RetestLimit;
import org.isopter.model.clinical.acuity.UnusualLine;
import org.isopter.model.clinical.colour.ColourPlates;
import org.isopter.model.clinical.colour.PlateEdition;
import org.isopter.model.clinical.colour.PlateRule;
import org.isopter.model.clinical.colour.RedSaturation;
import org.isopter.model.clinical.field.BlindSpots;
import org.isopter.model.clinical.field.EyeField;
import org.isopter.model.clinical.field.FieldDetails;
import org.isopter.model.clinical.field.FieldMaps;
import org.isopter.model.clinical.field.FieldPlaces;
import org.isopter.model.clinical.field.FieldSigns;
import org.isopter.model.clinical.field.FieldStage;
import org.isopter.model.clinical.field.PerimetryFlag;
import org.isopter.model.clinical.field.PerimetryIndex;
import org.isopter.model.clinical.fundus.CupDisc;
import org.isopter.model.clinical.fundus.FrisenGrade;
import org.isopter.model.clinical.fundus.RetinopathyLevel;
import org.isopter.model.clinical.impairment.DrivingRule;
import org.isopter.model.clinical.impairment.DrivingVision;
import org.isopter.model.clinical.impairment.PersonImpairment;
import org.isopter.model.clinical.impairment.PresentingAcuity;
import org.isopter.model.clinical.impairment.VisionImpairments;
import org.isopter.model.clinical.lens.Lens;
import org.isopter.model.clinical.lens.LensAnswers;
import org.isopter.model.clinical.lens.PowerVectorTest;
import org.isopter.model.clinical.pupil.AfferentDefects;
import org.isopter.model.clinical.pupil.Anisocoria;
import org.isopter.model.clinical.pupil.LightNearDissociation;
import org.isopter.model.clinical.pupil.PupilCausesTest;
import org.isopter.model.clinical.pupil.PupilReading;
import org.isopter.model.clinical.pupil.SideDifference;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/**
 * Every statement over every finite input, and over a grid of the numeric ones: the fields of both
 * eyes with their details, the signs of the pupils, acuities in every notation and in pairs,
 * scores, grades, indices and differences.
 */
final class AllStatements {

  private static final List<String> ACUITIES =
      List.of(
          "6/5",
          "6/6",
          "6/6+5",
          "6/5-4",
          "6/9-2",
          "6/12-1",
          "6/12",
          "6/18",
          "6/60",
          "3/60",
          "1/60",
          "6/20 m",
          "20/20",
          "20/40+1",
          "20/70",
          "4/8",
          "0.5 decimal",
          "0.3 logMAR",
          "-0.1 logMAR",
          "85 letters",
          "CF",
          "CF 1 m",
          "CF 30 cm",
          "CF 2 m",
          "HM",
          "HM 50 cm",
          "LP",
          "LP accurate",
          "NLP",
          "N6",
          "N8",
          "J3",
          "0.8 M",
          "NI");

  private final Consumer<Statement> sink;

  private AllStatements(Consumer<Statement> sink) {
    this.sink = sink;
  }

  /** Hands every statement to a consumer. */
  static void forEach(Consumer<Statement> sink) {
    AllStatements all = new AllStatements(sink);
    all.fields();
    all.pupils();
    all.acuities();
    all.pairs();
    all.colours();
    all.defects();
    all.blindSpots();
    all.perimetry();
    all.discs();
    all.differences();
    all.lenses();
  }

  private void add(Answer<?> answer) {
    sink.accept(answer.statement());
  }

  private void fields() {
    for (FieldSigns signs : FieldMaps.allWithCentres()) {
      sink.accept(FieldPlaces.of(signs).places().statement());
    }
    List<FieldDetails> details = FieldMaps.details();
    for (FieldSigns signs : twoDepths()) {
      for (FieldDetails known : details) {
        sink.accept(FieldPlaces.of(signs.with(known)).places().statement());
        sink.accept(FieldPlaces.of(signs.asSector().with(known)).places().statement());
      }
    }
  }

  /** Returns the 256 maps of quadrants that are full or absent. */
  private static List<FieldSigns> twoDepths() {
    return FieldMaps.all().stream()
        .filter(signs -> isDeep(signs.right()) && isDeep(signs.left()))
        .toList();
  }

  private static boolean isDeep(EyeField eye) {
    return Stream.of(
            eye.superotemporal(), eye.superonasal(), eye.inferotemporal(), eye.inferonasal())
        .noneMatch(FieldResponse.REDUCED::equals);
  }

  /** Goes through the combinations of the signs at the heart of the table of causes. */
  private void pupils() {
    PupilCausesTest.everyCombination(signs -> sink.accept(PupilReading.of(signs).statement()));
    for (PupilResponse light : PupilResponse.values()) {
      for (PupilResponse near : PupilResponse.values()) {
        add(LightNearDissociation.of(light, near));
      }
    }
  }

  private void acuities() {
    for (String text : ACUITIES) {
      AcuityReading one = reading(text);
      add(AcuityEquivalents.of(one.acuity()));
      for (int letters = 0; letters <= 6; letters++) {
        add(PartialLine.logMar(withLetters(one, letters)));
      }
      add(VisionImpairments.of(one));
      add(VisionImpairments.near(one));
      add(VisionImpairments.near(one.from(Quantity.of("40", Unit.CENTIMETRE))));
      add(PresentingAcuity.of(List.of(one)));
      lines(one.acuity());
    }
    add(VisionImpairments.ofField(BigDecimal.TEN));
    add(VisionImpairments.ofField(BigDecimal.valueOf(20)));
  }

  private static AcuityReading withLetters(AcuityReading one, int letters) {
    return new AcuityReading(
        one.acuity(),
        one.correction(),
        one.chart(),
        one.distance(),
        Optional.of(letters).filter(count -> count > 0));
  }

  private void lines(Acuity acuity) {
    if (acuity instanceof Acuity.Fraction line) {
      UnusualLine.remark(line).ifPresent(sink);
    }
    if (acuity instanceof Acuity.Low low) {
      Arrays.stream(LowVisionConvention.values()).forEach(one -> add(one.logMar(low)));
    }
    if (acuity instanceof Acuity.MUnits print) {
      add(NearAcuity.points(print));
      add(NearAcuity.of(print, Optional.empty()));
      add(NearAcuity.of(print, Optional.of(Quantity.of("40", Unit.CENTIMETRE))));
    }
    if (acuity instanceof Acuity.Jaeger print) {
      add(NearAcuity.of(print));
    }
  }

  private void pairs() {
    for (String first : ACUITIES) {
      for (String second : ACUITIES) {
        AcuityReading one = reading(first);
        AcuityReading two = reading(second);
        add(AcuityComparison.compare(one, two));
        add(PinholeComparison.of(one, two));
        add(AcuityEquivalents.mean(List.of(read(first), read(second))));
        add(new PersonImpairment(List.of(one), List.of(two), List.of()).category());
        for (RetestLimit limit : RetestLimit.values()) {
          add(AcuityChange.between(one, two, limit));
        }
        for (DrivingRule rule : DrivingRule.values()) {
          add(DrivingVision.acuity(rule, one));
          add(DrivingVision.acuity(rule, one, two));
        }
      }
    }
    for (DrivingVision.FieldRule rule : DrivingVision.FieldRule.values()) {
      add(DrivingVision.field(rule, new DrivingVision.Extent(120, 60, 60, 30, 30, false)));
      add(DrivingVision.field(rule, new DrivingVision.Extent(100, 50, 50, 10, 10, true)));
    }
  }

  private void colours() {
    for (PlateRule rule : PlateRule.values()) {
      for (PlateEdition edition : PlateEdition.values()) {
        for (int correct = 0; correct <= edition.scored(); correct++) {
          Plates plates =
              new Plates(
                  correct, edition.scored(), ColourTest.ISHIHARA, Optional.of(edition.plates()));
          add(ColourPlates.verdict(plates, rule).orThrow());
          add(ColourPlates.firstPlateMissed(plates));
        }
      }
    }
    grid(0, 100, 20)
        .forEach(
            right ->
                grid(20, 100, 20)
                    .forEach(
                        left -> sink.accept(RedSaturation.of(right, left).orThrow().statement())));
  }

  private void defects() {
    Arrays.stream(DefectGrade.values()).forEach(grade -> add(AfferentDefects.logUnits(grade)));
    grid(1, 40, 1).forEach(tenths -> add(AfferentDefects.grade(tenths.movePointLeft(1))));
  }

  private void blindSpots() {
    BlindSpot none = new BlindSpot(new EnumMap<>(Edge.class), Optional.empty(), Optional.empty());
    for (int width = 1; width <= 20; width++) {
      Map<Edge, Quantity> edges = new EnumMap<>(Edge.class);
      edges.put(Edge.NASAL, Quantity.of("12", Unit.DEGREE));
      edges.put(Edge.TEMPORAL, new Quantity(BigDecimal.valueOf(12 + width), Unit.DEGREE));
      BlindSpot spot = new BlindSpot(edges, Optional.empty(), Optional.empty());
      for (BlindSpot other : List.of(none, spot)) {
        add(BlindSpots.width(other));
        add(BlindSpots.height(other));
        add(BlindSpots.widerRight(spot, other));
      }
    }
  }

  private void perimetry() {
    for (FieldStage rule : FieldStage.values()) {
      grid(-350, 30, 5).forEach(tenths -> add(rule.of(tenths.movePointLeft(1))));
    }
    for (PerimetryFlag flag : PerimetryFlag.values()) {
      IntStream.rangeClosed(0, 20).forEach(errors -> add(flag.of(errors, 20).orThrow()));
    }
    for (PerimetryIndex index : PerimetryIndex.values()) {
      grid(0, 99, 1).forEach(value -> sink.accept(index.of(value).orThrow()));
    }
    grid(0, 50, 1).forEach(value -> add(PerimetryFlag.highThreshold(value)));
  }

  private void discs() {
    Arrays.stream(FrisenGrade.values()).map(FrisenGrade::statement).forEach(sink);
    for (int quadrants = 0; quadrants <= 4; quadrants++) {
      for (boolean more : List.of(true, false)) {
        add(
            RetinopathyLevel.of(
                new RetinopathyLevel.Signs(more, more, quadrants, 0, 0, quadrants == 3)));
      }
    }
    grid(5, 30, 1)
        .map(tenths -> tenths.movePointLeft(1))
        .forEach(
            diameter -> {
              add(CupDisc.percentiles(Optional.of(diameter)));
              add(CupDisc.expected(diameter));
              grid(0, 10, 1)
                  .map(tenths -> tenths.movePointLeft(1))
                  .forEach(ratio -> add(CupDisc.isAboveLimit(ratio, Optional.of(diameter))));
            });
    add(CupDisc.percentiles(Optional.empty()));
  }

  private void lenses() {
    for (int axis = 0; axis <= 180; axis += 15) {
      for (String power : List.of("-2.00", "0.00", "1.25")) {
        Lens lens = PowerVectorTest.lens("-3.25", power, axis);
        add(LensAnswers.sphericalEquivalent(lens));
        add(LensAnswers.powerVector(lens));
        add(LensAnswers.transposed(lens));
        add(LensAnswers.isSame(lens, lens.transposed()));
        add(LensAnswers.isSame(lens, PowerVectorTest.lens("-3.25", "-1.00", axis)));
        add(LensAnswers.atCornea(lens, BigDecimal.valueOf(12)).orThrow());
      }
    }
    grid(1, 100, 1).forEach(prism -> add(LensAnswers.degrees(prism)));
  }

  private void differences() {
    grid(1, 9, 2)
        .forEach(
            right ->
                grid(1, 9, 2)
                    .forEach(
                        left -> {
                          SideDifference sides = SideDifference.of(right, left);
                          add(sides.isUnusualProtrusion());
                          sink.accept(sides.lids("palpebral fissure"));
                          unequal(Anisocoria.of(right, left).orThrow());
                        }));
  }

  private void unequal(Anisocoria bright) {
    sink.accept(bright.statement());
    grid(1, 9, 2)
        .forEach(
            right ->
                grid(1, 9, 2)
                    .forEach(
                        left ->
                            add(
                                Anisocoria.inLightAndDark(
                                    bright, Anisocoria.of(right, left).orThrow()))));
  }

  private static Stream<BigDecimal> grid(int from, int to, int step) {
    return IntStream.iterate(from, number -> number <= to, number -> number + step)
        .mapToObj(BigDecimal::valueOf);
  }
}
