package org.isopter.model.clinical.impairment;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.clinical.acuity.AcuityComparison;
import org.isopter.model.clinical.acuity.AcuityOrder;
import org.isopter.model.clinical.impairment.VisionImpairments.Category;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Sources;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.value.Site;

/**
 * The vision impairment category of a person: by both eyes open where that was tested, else by the
 * better eye, as presented. That one eye is blind is a statement of that eye, not of the person.
 *
 * @param right the distance acuities of the right eye
 * @param left the distance acuities of the left eye
 * @param both the distance acuities with both eyes open
 * @param sightless the eyes that are recorded as gone or shrunken, and see nothing
 */
public record PersonImpairment(
    List<AcuityReading> right,
    List<AcuityReading> left,
    List<AcuityReading> both,
    Set<Site> sightless) {

  public PersonImpairment {
    right = List.copyOf(right);
    left = List.copyOf(left);
    both = List.copyOf(both);
    sightless = Set.copyOf(sightless);
  }

  /** Makes the acuities of a person who has both eyes. */
  public PersonImpairment(
      List<AcuityReading> right, List<AcuityReading> left, List<AcuityReading> both) {
    this(right, left, both, Set.of());
  }

  /**
   * Returns the category.
   *
   * <p>Withheld where the presenting acuity of an eye is missing and the other eye does not settle
   * it, or where the better eye cannot be told.
   */
  public Answer<Category> category() {
    StatementBuilder topic = topic();
    return together()
        .flatMap(PersonImpairment::category)
        .or(this::byEyes)
        .map(found -> VisionImpairments.given(topic, found))
        .orElseGet(() -> topic.withheld("The category of the person cannot be told."));
  }

  /**
   * A reading of both eyes counts only when no eye was read through what is worn and it was not.
   */
  private Optional<AcuityReading> together() {
    boolean wornApart =
        Stream.concat(right.stream(), left.stream()).anyMatch(PresentingAcuity::isWorn);
    return PresentingAcuity.of(both)
        .value()
        .filter(reading -> !wornApart || PresentingAcuity.isWorn(reading));
  }

  private Optional<Category> byEyes() {
    Optional<AcuityReading> rightEye = PresentingAcuity.of(right).value();
    Optional<AcuityReading> leftEye = PresentingAcuity.of(left).value();
    if (isSightless(Site.RIGHT, right)) {
      return leftEye.flatMap(PersonImpairment::category);
    }
    if (isSightless(Site.LEFT, left)) {
      return rightEye.flatMap(PersonImpairment::category);
    }
    return rightEye
        .flatMap(one -> leftEye.flatMap(two -> betterOf(one, two)))
        .flatMap(PersonImpairment::category)
        .or(() -> byCategories(rightEye, leftEye));
  }

  /** An eye that sees after all is not what the record calls it. */
  private boolean isSightless(Site eye, List<AcuityReading> readings) {
    return sightless.contains(eye) && readings.stream().allMatch(PresentingAcuity::isNoLight);
  }

  private static Optional<AcuityReading> betterOf(AcuityReading one, AcuityReading two) {
    return AcuityComparison.compare(one, two)
        .value()
        .map(order -> order == AcuityOrder.WORSE ? two : one);
  }

  /** An eye without impairment settles it; else both eyes must have a category. */
  private static Optional<Category> byCategories(
      Optional<AcuityReading> rightEye, Optional<AcuityReading> leftEye) {
    List<Category> known =
        Stream.of(rightEye, leftEye)
            .flatMap(Optional::stream)
            .flatMap(eye -> category(eye).stream())
            .toList();
    boolean settled =
        known.size() == 2
            || known.stream().anyMatch(one -> one.impairment() == VisionImpairment.NONE);
    return settled ? Optional.of(VisionImpairments.better(known)) : Optional.empty();
  }

  private static Optional<Category> category(AcuityReading reading) {
    return VisionImpairments.of(reading).value();
  }

  private StatementBuilder topic() {
    return StatementBuilder.of(
        "impairment.person",
        Sources.WHO,
        "right " + facts(Site.RIGHT, right),
        "left " + facts(Site.LEFT, left),
        "both eyes open " + facts(both));
  }

  private String facts(Site eye, List<AcuityReading> readings) {
    return sightless.contains(eye) && readings.isEmpty() ? "gone or shrunken" : facts(readings);
  }

  private static String facts(List<AcuityReading> readings) {
    return readings.isEmpty()
        ? "not recorded"
        : String.join(", ", readings.stream().map(PresentingAcuity::fact).toList());
  }
}
