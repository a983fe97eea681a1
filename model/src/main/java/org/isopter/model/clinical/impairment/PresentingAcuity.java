package org.isopter.model.clinical.impairment;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Sources;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.LowVision;

/** The acuity of an eye, or of both together, with the correction that the person came with. */
public final class PresentingAcuity {

  private static final Set<Correction> WORN =
      EnumSet.of(Correction.SPECTACLES, Correction.CONTACT_LENSES, Correction.HABITUAL);

  private PresentingAcuity() {}

  /**
   * Returns the reading that counts as presenting.
   *
   * <p>What was worn comes first; where nothing is recorded as worn, one reading of which no
   * correction is stated is taken for it by convention. An unaided reading is presenting only of a
   * person who wears nothing, which no record says; trial lenses never are. An eye that perceives
   * no light perceives none through any lens. Withheld where none or several remain.
   */
  public static Answer<AcuityReading> of(List<AcuityReading> readings) {
    List<String> facts = readings.stream().map(PresentingAcuity::fact).toList();
    List<String> because = facts.isEmpty() ? List.of("no acuity recorded") : facts;
    StatementBuilder topic = new StatementBuilder("acuity.presenting", Sources.WHO, because);
    return worn(readings, topic)
        .or(() -> noLight(readings, topic))
        .or(() -> assumed(readings, topic))
        .orElseGet(
            () -> topic.withheld("Which acuity the person came with cannot be told from these."));
  }

  private static Optional<Answer<AcuityReading>> worn(
      List<AcuityReading> readings, StatementBuilder topic) {
    return only(readings, PresentingAcuity::isWorn)
        .map(one -> topic.given(one, Certainty.BY_RULE, one.words() + " was read as worn."));
  }

  static boolean isWorn(AcuityReading reading) {
    return reading.correction().filter(WORN::contains).isPresent();
  }

  private static Optional<Answer<AcuityReading>> noLight(
      List<AcuityReading> readings, StatementBuilder topic) {
    return readings.stream()
        .filter(any -> readings.stream().allMatch(PresentingAcuity::isNoLight))
        .findFirst()
        .map(
            one ->
                topic.given(
                    one, Certainty.BY_RULE, "No light is perceived, whatever may be worn."));
  }

  static boolean isNoLight(AcuityReading reading) {
    return reading.acuity() instanceof Acuity.Low low
        && low.category() == LowVision.NO_LIGHT_PERCEPTION;
  }

  private static Optional<Answer<AcuityReading>> assumed(
      List<AcuityReading> readings, StatementBuilder topic) {
    return only(readings, reading -> reading.correction().isEmpty())
        .map(
            one ->
                topic.given(
                    one,
                    Certainty.BY_CONVENTION,
                    one.words() + " is taken as presenting: nothing is recorded as worn."));
  }

  private static Optional<AcuityReading> only(
      List<AcuityReading> readings, Predicate<AcuityReading> which) {
    List<AcuityReading> fitting =
        readings.stream()
            .filter(reading -> !(reading.acuity() instanceof Acuity.NotImproved))
            .filter(which)
            .toList();
    return fitting.size() == 1 ? Optional.of(fitting.get(0)) : Optional.empty();
  }

  static String fact(AcuityReading reading) {
    return reading.words() + reading.correction().map(lens -> " (" + lens.word() + ")").orElse("");
  }
}
