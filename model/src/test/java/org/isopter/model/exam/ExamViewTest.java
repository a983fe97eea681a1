package org.isopter.model.exam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.pupil.Lighting;
import org.isopter.model.answer.tissue.Tonometry;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;

/** What an examination answers when it is asked. */
class ExamViewTest {

  private static final OffsetDateTime NINE = OffsetDateTime.parse("2026-03-02T09:00:00+01:00");

  private static ExamView view(Fact<?>... facts) {
    return new Exam(
            Header.of(Identifier.of("e-1"), Party.of(Identifier.of("p-1")), NINE), List.of(facts))
        .view();
  }

  private static Fact<Quantity> pressure(Site eye, String mmHg) {
    return Fact.of(Pressures.INTRAOCULAR, eye, Quantity.of(mmHg, Unit.MM_HG));
  }

  private static Fact<Pupils.Size> size(Site eye, String mm, Lighting light) {
    return Fact.of(Pupils.SIZE, eye, new Pupils.Size(Quantity.of(mm, Unit.MILLIMETRE), light));
  }

  private static <V> List<String> pairs(ExamView exam, Finding<V> what) {
    return exam.pairs(what).map(pair -> pair.right().value() + "/" + pair.left().value()).toList();
  }

  @Test
  void pairsWhatWasMeasuredAlikeInBothEyes() {
    ExamView exam =
        view(
            pressure(Site.RIGHT, "14").by(Tonometry.GOLDMANN),
            pressure(Site.RIGHT, "18").by(Tonometry.REBOUND),
            pressure(Site.LEFT, "19").by(Tonometry.REBOUND));
    assertEquals(List.of("18 mmHg/19 mmHg"), pairs(exam, Pressures.INTRAOCULAR));
  }

  @Test
  void pairsOnlyWhatIsOfOneLight() {
    ExamView exam =
        view(size(Site.RIGHT, "3.0", Lighting.BRIGHT), size(Site.LEFT, "5.0", Lighting.DIM));
    assertEquals(0, exam.pairs(Pupils.SIZE).count());
  }

  @Test
  void pairsOnlyWhatIsOfOneTime() {
    ExamView exam =
        view(pressure(Site.RIGHT, "14"), pressure(Site.LEFT, "15").at(NINE.plusHours(2)));
    assertEquals(0, exam.pairs(Pressures.INTRAOCULAR).count());
  }

  @Test
  void makesNoPairOfOneEyeOrOfTheWrongSides() {
    ExamView exam = view(pressure(Site.RIGHT, "14"), pressure(Site.LEFT, "15"));
    Seen<Quantity> right = exam.right().only(Pressures.INTRAOCULAR).orElseThrow();
    Seen<Quantity> left = exam.left().only(Pressures.INTRAOCULAR).orElseThrow();
    assertEquals(List.of(right, left), new EyePair<>(right, left).seen());
    assertThrows(IllegalArgumentException.class, () -> new EyePair<>(left, right));
    assertThrows(IllegalArgumentException.class, () -> new EyePair<>(right, right));
  }

  @Test
  void givesTheOnlyValueAndNoneOfSeveral() {
    ExamView exam =
        view(pressure(Site.RIGHT, "14"), pressure(Site.LEFT, "15"), pressure(Site.LEFT, "16"));
    assertEquals(
        Optional.of("14 mmHg"),
        exam.right().only(Pressures.INTRAOCULAR).map(seen -> seen.value().toString()));
    assertTrue(exam.left().only(Pressures.INTRAOCULAR).isEmpty());
    assertEquals(2, exam.left().fellow().fellow().seen(Pressures.INTRAOCULAR).count());
  }

  @Test
  void tellsWhyThereIsNoValue() {
    ExamView exam =
        view(
            Fact.absent(Pressures.INTRAOCULAR, Site.RIGHT, Absence.REFUSED),
            pressure(Site.LEFT, "15"));
    assertEquals(Optional.of(Absence.REFUSED), exam.right().absence(Pressures.INTRAOCULAR));
    assertEquals(Optional.empty(), exam.left().absence(Pressures.INTRAOCULAR));
    assertTrue(exam.right().isSilentOn(Pupils.SIZE));
    assertTrue(!exam.right().isSilentOn(Pressures.INTRAOCULAR));
    assertEquals(
        List.of(Pressures.INTRAOCULAR),
        exam.findings().filter(Catalogue.standard().all()::contains).toList());
  }
}
