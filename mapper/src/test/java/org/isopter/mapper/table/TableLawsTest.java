package org.isopter.mapper.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirReader;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.junit.jupiter.api.Test;

/** What is laid out as a table is what was recorded: random examinations of every finding. */
class TableLawsTest {

  private static final Catalogue CATALOGUE = Catalogue.standard();
  private static final long SEED = new SplittableRandom().nextLong();

  private final ExamSampler exams = new ExamSampler(CATALOGUE.all(), new SplittableRandom(SEED));

  @Test
  void factsComeBackFromTheLongTable() {
    for (int i = 0; i < 2_000; i++) {
      Exam exam = exams.next();
      List<Fact<?>> plain = exam.facts().stream().<Fact<?>>map(TableLawsTest::plain).toList();
      assertEquals(plain, RowReader.facts(FindingRows.of(pooled(exam))), "seed " + SEED);
    }
  }

  @Test
  void theTableOfABundleIsThatOfTheRecord() {
    FhirWriter writer = FhirWriter.of(BundleKind.COLLECTION);
    FhirReader reader = new FhirReader(CATALOGUE);
    for (int i = 0; i < 300; i++) {
      Exam exam = exams.next();
      Exam read = reader.read(writer.write(exam)).orThrow();
      assertEquals(cells(exam), cells(read), "seed " + SEED);
    }
  }

  @Test
  void theWideTableHoldsAValueOfEachSlotThatTheLongTableHas() {
    Table<EyeRow> wide = ExaminationsTable.table(CATALOGUE);
    for (int i = 0; i < 500; i++) {
      Exam exam = exams.next();
      long facts = 0;
      for (EyeRow row : EyeRow.of(pooled(exam))) {
        Map<String, Object> cells = RowReader.cells(wide, row);
        assertTrue(cells.containsKey("eye"));
        facts +=
            cells.entrySet().stream()
                .filter(cell -> cell.getKey().endsWith("_count"))
                .mapToLong(cell -> (Long) cell.getValue())
                .sum();
      }
      long found = exam.facts().stream().filter(fact -> fact.panel().isPresent()).count();
      assertEquals(found, facts, "seed " + SEED);
    }
  }

  @Test
  void columnsSayWhatTheyMean() {
    for (Table<?> table : List.of(FindingsTable.table(), ExaminationsTable.table(CATALOGUE))) {
      for (Column<?> column : table.columns()) {
        assertTrue(column.name().matches("[a-z0-9_]+"), column.name());
        assertTrue(!column.meaning().isBlank(), column.name());
      }
    }
  }

  private static List<Map<String, Object>> cells(Exam exam) {
    return FindingRows.of(pooled(exam)).stream()
        .map(row -> RowReader.cells(FindingsTable.table(), row))
        .toList();
  }

  private static <V> Fact<V> plain(Fact<V> fact) {
    return fact.outcome()
        .fold(
            value -> Fact.of(fact.finding(), fact.site(), value),
            reason -> Fact.absent(fact.finding(), fact.site(), reason));
  }

  private static PooledExam pooled(Exam exam) {
    return Pooled.of(exam);
  }
}
