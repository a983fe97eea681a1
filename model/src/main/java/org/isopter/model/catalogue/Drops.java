package org.isopter.model.catalogue;

import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.pupil.DilatingDrug;
import org.isopter.model.answer.pupil.DrugEffect;
import org.isopter.model.answer.pupil.TestDrug;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Shape;
import org.isopter.model.finding.Shapes;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** Drops that change the pupil: to see the fundus, or as a test. */
public final class Drops {

  static final Entries ENTRIES = new Entries();

  /**
   * A drop given to widen the pupil; when it was given is the time of the entry.
   *
   * @param drug the drug
   * @param strength its strength in percent, when stated
   */
  public record Dilation(DilatingDrug drug, Optional<Quantity> strength) {}

  /**
   * A pupil after a test drug.
   *
   * @param effect what the pupil did
   * @param drug the drug
   * @param strength its strength in percent, when stated
   * @param waited how long after the drop it was judged, when stated
   * @param before the diameter before the drop, when measured
   * @param after the diameter when it was judged, in the same light, when measured
   */
  public record DrugTest(
      DrugEffect effect,
      TestDrug drug,
      Optional<Quantity> strength,
      Optional<Quantity> waited,
      Optional<Quantity> before,
      Optional<Quantity> after) {

    /** Makes a test in which nothing was measured. */
    public DrugTest(
        DrugEffect effect, TestDrug drug, Optional<Quantity> strength, Optional<Quantity> waited) {
      this(effect, drug, strength, waited, Optional.empty(), Optional.empty());
    }
  }

  private static final Part<Dilation, Quantity> STRENGTH =
      Part.optional("drop-strength", "Strength of the drop", strength(), Dilation::strength);

  private static final Part<DrugTest, TestDrug> TEST_DRUG =
      Part.required("test-drug", "Test drug", Shapes.oneOf(TestDrug.class), DrugTest::drug);

  private static final Part<DrugTest, Quantity> TEST_STRENGTH =
      Part.optional("drop-strength", "Strength of the drop", strength(), DrugTest::strength);

  private static final Part<DrugTest, Quantity> WAITED =
      Part.optional(
          "waited",
          "Time from the drop to the judgement",
          Shapes.measure(Unit.MINUTE, "1", "600", 0),
          DrugTest::waited);

  private static final Part<DrugTest, Quantity> BEFORE =
      Part.optional("size-before", "Diameter before the drop", diameter(), DrugTest::before);

  private static final Part<DrugTest, Quantity> AFTER =
      Part.optional("size-after", "Diameter after the drop", diameter(), DrugTest::after);

  /** A drop given to widen the pupil. */
  public static final Finding<Dilation> DILATION =
      ENTRIES.add(
          Finding.of("dilating-drops", "Drops given to widen the pupil")
              .value(
                  Layout.of(
                      Shapes.oneOf(DilatingDrug.class),
                      Dilation::drug,
                      List.of(STRENGTH),
                      (drug, parts) -> new Dilation(drug, parts.find(STRENGTH))))
              .at(Site.EACH_OR_BOTH)
              .cite("common practice, no source")
              .note("The time of the entry is when the drop was given.")
              .build());

  /** What a pupil did after a test drug. */
  public static final Finding<DrugTest> TEST =
      ENTRIES.add(
          Finding.of("pupil-drug-test", "Pupil after a test drug")
              .value(
                  Layout.of(
                      Shapes.oneOf(DrugEffect.class),
                      DrugTest::effect,
                      List.of(TEST_DRUG, TEST_STRENGTH, WAITED, BEFORE, AFTER),
                      (effect, parts) ->
                          new DrugTest(
                              effect,
                              parts.get(TEST_DRUG),
                              parts.find(TEST_STRENGTH),
                              parts.find(WAITED),
                              parts.find(BEFORE),
                              parts.find(AFTER))))
              .distinguishedBy(TEST_DRUG)
              .cite("Practical Neurology table 6; common practice, no source")
              .note("What was seen, for each eye; what it means is not part of the finding.")
              .build());

  private Drops() {}

  private static Shape<Quantity> diameter() {
    return Shapes.measure(Unit.MILLIMETRE, "0.5", "10", 1);
  }

  private static Shape<Quantity> strength() {
    return Shapes.measure(Unit.PERCENT, "0.01", "20", 3);
  }
}
