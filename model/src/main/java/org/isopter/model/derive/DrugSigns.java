package org.isopter.model.derive;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.answer.pupil.TestDrug;
import org.isopter.model.catalogue.Drops;
import org.isopter.model.clinical.pupil.PupilSign;
import org.isopter.model.value.Quantity;

/** Which sign a drug tests, as far as the pupils ask. */
final class DrugSigns {

  private DrugSigns() {}

  /** A healthy pupil does not answer 0.0625 % of pilocarpine, and answers 0.5 % and more. */
  static Optional<PupilSign> of(Drops.DrugTest test) {
    TestDrug drug = test.drug();
    if (drug == TestDrug.PILOCARPINE) {
      return test.strength().map(Quantity::value).flatMap(DrugSigns::pilocarpine);
    }
    return Optional.ofNullable(
        Map.of(
                TestDrug.COCAINE, PupilSign.COCAINE,
                TestDrug.APRACLONIDINE, PupilSign.APRACLONIDINE,
                TestDrug.HYDROXYAMFETAMINE, PupilSign.HYDROXYAMFETAMINE)
            .get(drug));
  }

  private static Optional<PupilSign> pilocarpine(BigDecimal percent) {
    if (percent.compareTo(new BigDecimal("0.063")) <= 0) {
      return Optional.of(PupilSign.WEAK_PILOCARPINE);
    }
    return percent.compareTo(new BigDecimal("0.5")) >= 0
        ? Optional.of(PupilSign.STRONG_PILOCARPINE)
        : Optional.empty();
  }
}
