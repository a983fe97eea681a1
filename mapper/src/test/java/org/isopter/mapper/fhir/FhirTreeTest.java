package org.isopter.mapper.fhir;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.isopter.mapper.record.PlainJson;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.json.JsonMapper;

final class FhirTreeTest {

  private static final JsonMapper DIGITS =
      JsonMapper.builder().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS).build();

  @Test
  void isTheBundleOfTheWriterToTheDigit() {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new Random(577215));
    for (int i = 0; i < 60; i++) {
      Exam exam = exams.next();
      for (BundleKind kind : BundleKind.values()) {
        assertEquals(
            DIGITS.readTree(FhirWriter.of(kind).write(exam)).toString(),
            DIGITS.readTree(PlainJson.of(FhirTree.of(exam, kind))).toString());
      }
    }
  }
}
