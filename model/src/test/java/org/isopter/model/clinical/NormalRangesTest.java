package org.isopter.model.clinical;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.clinical.fundus.CupDisc;
import org.isopter.model.clinical.pupil.Anisocoria;
import org.isopter.model.clinical.pupil.SideDifference;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Span;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Variant;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Limits of entry in the catalogue, and what statements quote of normal. */
class NormalRangesTest {

  /** The finding and part that a row's limits of entry are about. */
  private static final Map<String, String> LIMITS =
      Map.ofEntries(
          Map.entry("pupil, bright light", "pupil-size.value"),
          Map.entry("pupil, room light", "pupil-size.value"),
          Map.entry("pupil, dark / dim / light (0/1/16 lux)", "pupil-size.value"),
          Map.entry("IOP", "intraocular-pressure.value"),
          Map.entry("MRD1", "margin-reflex-distance.value"),
          Map.entry("palpebral fissure", "palpebral-fissure.value"),
          Map.entry("levator function", "levator-function.value"),
          Map.entry("duction", "eye-movements."),
          Map.entry("sphere", "refraction.sphere"),
          Map.entry("cylinder", "refraction.cylinder"),
          Map.entry("axis", "refraction.axis"),
          Map.entry("cup-disc ratio", "vertical-cup-disc-ratio.value"),
          Map.entry("red saturation of the worse eye", "red-saturation.value"));

  static Stream<CheckRow> rows() {
    return CheckTable.NORMAL_RANGES.rows();
  }

  @ParameterizedTest
  @MethodSource("rows")
  void takesEntriesWithinTheLimitsAndQuotesWhatIsPublished(CheckRow row) {
    switch (row.name()) {
      case "anisocoria, healthy" -> {
        Anisocoria one = Anisocoria.of(new BigDecimal("5"), new BigDecimal("4")).orThrow();
        assertTrue(one.statement().text().contains("rare in healthy"), one.statement().text());
        assertTrue(row.cell("normal").contains("2.3% >=1.0"));
      }
      case "Hertel" -> checkProtrusion(row);
      case "prism" -> checkPrism(row);
      case "VCDR vs disc diameter" -> checkFormula();
      case "spontaneous venous pulsation" ->
          assertTrue(note("venous-pulsation").contains("absence alone means nothing"));
      default -> checkLimits(row);
    }
  }

  private static void checkProtrusion(CheckRow row) {
    assertTrue(row.cell("normal").contains("asymmetry > 2 mm unusual"));
    assertEquals(Optional.of(false), unusual("18", "16"));
    assertEquals(Optional.of(true), unusual("18.5", "16"));
    assertEquals(Optional.of(true), unusual("16", "18.5"));
  }

  private static Optional<Boolean> unusual(String right, String left) {
    return SideDifference.of(new BigDecimal(right), new BigDecimal(left))
        .isUnusualProtrusion()
        .value();
  }

  /** A record states no prism of 0, so that its least entry is above the table's. */
  private static void checkPrism(CheckRow row) {
    Span span = span("refraction", "horizontal-prism");
    assertEquals(0, span.most().compareTo(new BigDecimal(row.cell("hard_max"))));
    assertTrue(span.least().compareTo(new BigDecimal(row.cell("hard_min"))) > 0);
  }

  /** Garway-Heath 1998: the values are computed by hand from the formula. */
  private static void checkFormula() {
    assertEquals(new BigDecimal("0.32"), expected("1.5"));
    assertEquals(new BigDecimal("0.54"), expected("2.0"));
  }

  private static BigDecimal expected(String diameter) {
    return CupDisc.expected(new BigDecimal(diameter)).value().orElseThrow();
  }

  private static void checkLimits(CheckRow row) {
    String where = Optional.ofNullable(LIMITS.get(row.name())).orElseThrow();
    int dot = where.indexOf('.');
    Span span = span(where.substring(0, dot), where.substring(dot + 1));
    assertEquals(0, span.least().compareTo(new BigDecimal(row.cell("hard_min"))), row.toString());
    assertEquals(0, span.most().compareTo(new BigDecimal(row.cell("hard_max"))), row.toString());
  }

  private static String note(String finding) {
    return Catalogue.standard().byId(finding).orElseThrow().note();
  }

  private static Span span(String finding, String part) {
    return Catalogue.standard().byId(finding).orElseThrow().layout().variants().stream()
        .flatMap(variant -> specs(variant, part))
        .flatMap(spec -> span(spec).stream())
        .findFirst()
        .orElseThrow();
  }

  private static Stream<Spec> specs(Variant variant, String part) {
    return part.equals(Part.VALUE)
        ? variant.value().stream()
        : variant.parts().stream()
            .filter(one -> part.isEmpty() || one.key().equals(part))
            .map(Part::spec);
  }

  private static Optional<Span> span(Spec spec) {
    if (spec instanceof Spec.Measure measure) {
      return Optional.of(measure.spans().get(0));
    }
    return spec instanceof Spec.Count count
        ? Optional.of(
            new Span(Unit.ONE, BigDecimal.valueOf(count.least()), BigDecimal.valueOf(count.most())))
        : Optional.empty();
  }

  @Test
  void saysTheDifferenceOfTheLidsWithoutACutOff() {
    Statement lids =
        SideDifference.of(new BigDecimal("4"), new BigDecimal("2.5")).lids("palpebral fissure");
    assertEquals("The palpebral fissure is greater on the right by 1.5 mm.", lids.text());
  }
}
