package org.isopter.mapper.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Collectors;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.entry.UsualStep;
import org.isopter.model.exam.Exam;
import org.junit.jupiter.api.Test;

/** Not examined is not the same as not recorded. */
class StepRowTest {

  private static final String RECORD =
      """
      {"isopter":1,"record":{"id":"r-1"},"subject":{"id":"p-1"},\
      "performed":"2026-03-03T09:10:00Z","status":"final","findings":{\
      "intraocular-pressure":{"right":{"value":"17 mmHg"},"left":{"absent":"refused"}},\
      "afferent-defect":{"both":"none"}}}""";

  @Test
  void saysOfEachStepAndEyeWhetherItWasExaminedAndWhyNot() {
    Exam exam = new RecordReader(Catalogue.standard()).read(RECORD, RecordFormat.JSON).orThrow();
    List<StepRow> rows = StepRow.of(exam.view());
    assertEquals(2 * UsualStep.ASKED.size(), rows.size());
    assertEquals(
        List.of(
            "afferent-defect right examined",
            "pressure right examined",
            "afferent-defect left examined",
            "pressure left not-examined refused"),
        rows.stream()
            .filter(row -> row.state() != StepRow.State.NOT_RECORDED)
            .map(StepRowTest::text)
            .toList());
  }

  private static String text(StepRow row) {
    Table<StepRow> table = StepsTable.table();
    return table.columns().stream()
        .filter(column -> List.of("step", "eye", "state", "absent").contains(column.name()))
        .flatMap(column -> column.cell().apply(row).stream())
        .map(Object::toString)
        .collect(Collectors.joining(" "));
  }
}
