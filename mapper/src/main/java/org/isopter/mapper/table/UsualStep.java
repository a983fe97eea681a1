package org.isopter.mapper.table;

import java.util.List;
import java.util.Optional;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.catalogue.Lids;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Site;

/**
 * The steps of an examination in their usual order (common practice, no source), and the findings
 * that belong to each.
 */
public enum UsualStep {
  ACUITY(Acuities.DISTANCE),
  PINHOLE(Acuities.PINHOLE),
  NEAR(Acuities.NEAR),
  PUPILS(Pupils.SIZE, Pupils.EQUALITY, Pupils.DIRECT, Pupils.CONSENSUAL, Pupils.NEAR),
  AFFERENT_DEFECT(Pupils.AFFERENT_DEFECT),
  COLOUR(Colours.PLATES),
  RED(Colours.RED_SATURATION),
  BLIND_SPOT(Fields.BLIND_SPOT),
  FIELDS(Fields.CONFRONTATION),
  DISC(Discs.MARGIN, Discs.COLOUR, Discs.VERTICAL_CUP, Discs.SWELLING),
  LIDS(Lids.PTOSIS, Lids.MARGIN_REFLEX),
  PRESSURE(Pressures.INTRAOCULAR),
  MOVEMENTS(Movements.DUCTIONS);

  private final List<Finding<?>> findings;

  UsualStep(Finding<?>... findings) {
    this.findings = List.of(findings);
  }

  /** Returns the word of the table. */
  String word() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  /** Returns the facts of the step at an eye, or at both eyes together. */
  private List<Fact<?>> facts(ExamView exam, Site eye) {
    return exam.entries()
        .<Fact<?>>map(ExamView.Named::fact)
        .filter(fact -> findings.contains(fact.finding()))
        .filter(fact -> fact.site() == eye || fact.site() == Site.BOTH)
        .toList();
  }

  /** Says what became of the step at an eye. */
  StepRow at(ExamView exam, Site eye) {
    List<Fact<?>> facts = facts(exam, eye);
    Optional<Absence> absent =
        facts.stream().flatMap(fact -> fact.outcome().ifAbsent().stream()).findFirst();
    boolean found = facts.stream().anyMatch(fact -> fact.outcome().ifAbsent().isEmpty());
    StepRow.State state =
        found
            ? StepRow.State.EXAMINED
            : facts.isEmpty() ? StepRow.State.NOT_RECORDED : StepRow.State.NOT_EXAMINED;
    return new StepRow(exam.exam(), this, eye, state, found ? Optional.empty() : absent);
  }
}
