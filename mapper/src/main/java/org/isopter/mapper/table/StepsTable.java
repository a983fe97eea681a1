package org.isopter.mapper.table;

import org.isopter.model.value.Absence;

/** The table of the usual steps: what was examined, what was not, and what is not recorded. */
public final class StepsTable {

  /** Its name. */
  public static final String NAME = "steps";

  private StepsTable() {}

  /** Returns the table. */
  public static Table<StepRow> table() {
    Columns<StepRow> columns =
        new Columns<StepRow>()
            .addAll(ExamColumns.of(StepRow::exam, row -> row.exam().header().performed()))
            .text("step", "step of the usual order", row -> row.step().word())
            .text("eye", "which eye", row -> row.eye().word())
            .text(
                "state",
                "examined, not-examined, or not-recorded: neither is said",
                row -> row.state().word())
            .add(
                "absent",
                Kind.TEXT,
                "why it was not examined",
                row -> row.absent().map(Absence::word))
            .oneOf(Absence.values());
    return new Table<>(NAME, columns.list());
  }
}
