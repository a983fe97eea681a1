package org.isopter.mapper.pool;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.table.FindingRows;
import org.isopter.mapper.table.FindingsTable;
import org.isopter.mapper.table.PooledExam;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.junit.jupiter.api.Test;

/** A document by itself gives the rows that it gives among others. */
class RowMakerTest {

  private static final Deidentifier DEIDENTIFIER = new Deidentifier(Pools.KEY, false);

  private static final RowMaker MAKER =
      new RowMaker(Catalogue.standard(), Pools.reader(), Optional.of(DEIDENTIFIER));

  @Test
  void theRowsAreThoseOfTheExamination() {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new SplittableRandom(17));
    for (int line = 1; line <= 50; line++) {
      Exam exam = exams.next();
      PoolDocument document = Pools.record(exam, line);
      PooledExam read = Pools.reader().read(List.of(document)).exams().get(0);
      List<List<Optional<?>>> wanted =
          FindingRows.of(DEIDENTIFIER.apply(read)).stream()
              .map(FindingsTable.table()::cells)
              .toList();
      DocumentRows rows = MAKER.of(document);
      assertEquals(wanted, rows.findings());
      assertEquals(exam.facts().size(), rows.counts().facts());
      assertEquals(List.of(), rows.left());
    }
  }

  @Test
  void aResourceWithoutItsNeighboursIsRefusedWithAReason() {
    String patient = "{\"resourceType\":\"Patient\",\"id\":\"7\"}";
    DocumentRows rows = MAKER.of(Pools.json(patient, 3));
    assertEquals(PoolCounts.refused(1), rows.counts());
    assertEquals(
        List.of("{\"what\":\"refused\",\"type\":\"Patient\",\"reasons\":[\"not-in-a-bundle\"]}"),
        rows.left());
  }
}
