package org.isopter.mapper.record;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.junit.jupiter.api.Test;

final class PlainJsonTest {

  @Test
  void writesTheSameBytesAsTheRecordWriter() {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new Random(271828));
    for (int i = 0; i < 300; i++) {
      Exam exam = exams.next();
      assertEquals(
          new RecordWriter().write(exam, RecordFormat.JSON), PlainJson.of(RecordTree.of(exam)));
    }
  }

  @Test
  void escapesWhatJsonCannotHold() {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("a", "q\" b\\ n\n t\t u\u0001");
    tree.put("b", List.of());
    tree.put("c", Map.of());
    assertEquals(
        "{\n  \"a\": \"q\\\" b\\\\ n\\n t\\t u\\u0001\",\n  \"b\": [ ],\n  \"c\": { }\n}\n",
        PlainJson.of(tree));
  }
}
