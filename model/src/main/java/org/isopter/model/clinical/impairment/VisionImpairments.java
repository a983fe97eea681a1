package org.isopter.model.clinical.impairment;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.clinical.acuity.AcuityScale;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Numbers;
import org.isopter.model.clinical.statement.Sources;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Quantity;

/**
 * Categories of vision impairment after the World Health Organization, ICD-11 numbering. Edges are
 * compared in the recorded notation ({@link VisionEdge}); a suffix is not counted.
 */
public final class VisionImpairments {

  /**
   * A category.
   *
   * @param impairment the category
   * @param borderline whether letters were missed on the last line of the category
   */
  public record Category(VisionImpairment impairment, boolean borderline) {}

  private static final String EYE = "impairment.eye";

  private VisionImpairments() {}

  /**
   * Returns the category of one eye, or of both eyes tested together.
   *
   * <p>Withheld for counting fingers without a distance or beyond 1 m, and for near print.
   */
  public static Answer<Category> of(AcuityReading reading) {
    StatementBuilder topic =
        StatementBuilder.of(EYE, Sources.WHO, "acuity " + PresentingAcuity.fact(reading));
    if (reading.acuity() instanceof Acuity.Low low) {
      return ofLow(topic, low);
    }
    return AcuityScale.logMar(reading.acuity()).isPresent()
        ? given(topic, ofChart(reading))
        : topic.withheld(reading.acuity() + " is no distance acuity.");
  }

  /**
   * Returns the ICD-11 category in which a field of at most 10 degrees' radius places a person even
   * if the acuity is normal; withheld for a wider field.
   *
   * @param radius the radius of the better eye's field around fixation, in degrees
   */
  public static Answer<Category> ofField(BigDecimal radius) {
    StatementBuilder topic =
        StatementBuilder.of("impairment.field", Sources.WHO, "field radius " + radius + " deg");
    return radius.compareTo(BigDecimal.TEN) <= 0
        ? given(topic, "the field", sure(VisionImpairment.BLINDNESS_TO_ONE_SIXTIETH))
        : topic.withheld("A field wider than 10 degrees in radius sets no category by itself.");
  }

  /**
   * Says whether near vision is impaired: worse than N6 or 0.8 M at 40 cm with the correction worn.
   *
   * <p>Withheld at another or no stated distance, and for notations that the rule does not print.
   */
  public static Answer<Boolean> near(AcuityReading reading) {
    StatementBuilder topic =
        StatementBuilder.of(
            "impairment.near",
            Sources.WHO,
            "near acuity " + PresentingAcuity.fact(reading),
            "reading distance " + reading.distance().map(Quantity::toString).orElse("not stated"));
    boolean apart = reading.distance().filter(far -> Numbers.isMetres(far, "0.40")).isPresent();
    return printed(reading.acuity())
        .filter(worse -> apart)
        .map(worse -> topic.given(worse, Certainty.BY_RULE, nearWords(worse)))
        .orElseGet(() -> topic.withheld("The rule speaks of N or M print at 40 cm only."));
  }

  private static String nearWords(boolean worse) {
    return worse
        ? "Near vision is in the near impairment category: worse than N6 or 0.8 M at 40 cm."
        : "Near vision is not in the near impairment category: N6 or 0.8 M at 40 cm was read.";
  }

  private static Optional<Boolean> printed(Acuity near) {
    if (near instanceof Acuity.Points points) {
      return Optional.of(points.size().compareTo(BigDecimal.valueOf(6)) > 0);
    }
    return near instanceof Acuity.MUnits units
        ? Optional.of(units.size().compareTo(new BigDecimal("0.8")) > 0)
        : Optional.empty();
  }

  private static Category ofChart(AcuityReading reading) {
    Acuity acuity = reading.acuity();
    VisionImpairment category = ofChart(acuity, 0);
    return new Category(category, ofChart(acuity, AcuityScale.missed(reading)) != category);
  }

  private static VisionImpairment ofChart(Acuity acuity, double worse) {
    return Arrays.stream(VisionImpairment.values())
        .filter(one -> one.edge().filter(edge -> edge.isReachedBy(acuity, worse)).isPresent())
        .findFirst()
        .orElse(VisionImpairment.BLINDNESS_TO_LIGHT);
  }

  private static Answer<Category> ofLow(StatementBuilder topic, Acuity.Low low) {
    return switch (low.category()) {
      case NO_LIGHT_PERCEPTION -> given(topic, sure(VisionImpairment.BLINDNESS_NO_LIGHT));
      case COUNTING_FINGERS -> ofFingers(topic, low);
      default -> given(topic, sure(VisionImpairment.BLINDNESS_TO_LIGHT));
    };
  }

  private static Answer<Category> ofFingers(StatementBuilder topic, Acuity.Low low) {
    Optional<Integer> beyond =
        low.distance().flatMap(Numbers::metres).map(far -> far.compareTo(BigDecimal.ONE));
    if (beyond.isEmpty()) {
      return topic.withheld("Without the distance of the fingers no category is derived.");
    }
    if (beyond.get() > 0) {
      return topic.withheld("The rule prints counting fingers at 1 m only, not farther.");
    }
    return given(
        topic,
        sure(
            beyond.get() == 0
                ? VisionImpairment.BLINDNESS_TO_ONE_SIXTIETH
                : VisionImpairment.BLINDNESS_TO_LIGHT));
  }

  private static Category sure(VisionImpairment impairment) {
    return new Category(impairment, false);
  }

  static Answer<Category> given(StatementBuilder topic, Category category) {
    return given(topic, "acuity", category);
  }

  private static Answer<Category> given(StatementBuilder topic, String by, Category category) {
    String border =
        category.borderline() ? ", borderline: letters were missed on its last line" : "";
    String text =
        "Vision impairment category by %s alone: %s%s."
            .formatted(by, category.impairment(), border);
    return topic.given(category, Certainty.BY_RULE, text);
  }

  /** Returns the less impaired of two categories. */
  static Category better(List<Category> categories) {
    return categories.stream()
        .min((one, two) -> Integer.compare(one.impairment().number(), two.impairment().number()))
        .orElseThrow();
  }
}
