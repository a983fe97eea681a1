package org.isopter.mapper.table;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Site;

/** The wide table: a row for each eye of each examination, the columns those of the catalogue. */
public final class ExaminationsTable {

  /** Its name. */
  public static final String NAME = "examinations";

  private ExaminationsTable() {}

  /** Returns the table of the findings of a catalogue. */
  public static Table<EyeRow> table(Catalogue catalogue) {
    Columns<EyeRow> columns =
        new Columns<EyeRow>()
            .addAll(ExamColumns.of(ExaminationsTable::exam, ExaminationsTable::performed))
            .text("eye", "which eye, or both together", row -> row.eye().word())
            .oneOf(Site.values())
            .add("age", Kind.INTEGER, "in years; 90 may stand for more", ExaminationsTable::age)
            .add("sex", Kind.TEXT, "administrative sex", row -> row.pooled().person().sex())
            .add(
                "person_group",
                Kind.TEXT,
                "group of the person, as the file of persons calls it",
                row -> row.pooled().person().group())
            .add("site", Kind.TEXT, "key of the site that was named", row -> row.pooled().site())
            .add("examiner", Kind.TEXT, "key of who examined", ExaminationsTable::examiner);
    List<Table.Block<EyeRow>> blocks = new ArrayList<>();
    blocks.add(new Table.Block<>(0, columns.list().size(), any -> true));
    for (Finding<?> finding : catalogue.all()) {
      for (ColumnGroup slot : ColumnGroup.of(finding)) {
        int from = columns.list().size();
        columns.addAll(new SlotColumns(slot).columns());
        String name = slot.name();
        blocks.add(
            new Table.Block<>(from, columns.list().size(), row -> row.cell(name).isPresent()));
      }
    }
    return new Table<>(NAME, columns.list(), blocks);
  }

  private static Exam exam(EyeRow row) {
    return row.pooled().exam();
  }

  private static OffsetDateTime performed(EyeRow row) {
    return exam(row).header().performed();
  }

  private static Optional<String> examiner(EyeRow row) {
    return exam(row).header().performer().map(ExamColumns::key);
  }

  private static Optional<Long> age(EyeRow row) {
    return row.pooled().person().age().map(Integer::longValue);
  }
}
