package org.isopter.mapper.fhir;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What is written as FHIR is read again as it was. */
class RoundTripTest {

  /** The collection is what is read most; the other kinds differ only in what stands around. */
  private static int exams(BundleKind kind) {
    return kind == BundleKind.COLLECTION ? 4_000 : 500;
  }

  @ParameterizedTest
  @EnumSource(BundleKind.class)
  void readsWhatItWrote(BundleKind kind) {
    long seed = Long.getLong("seed", 20_260_302L);
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new Random(seed));
    FhirWriter writer = FhirWriter.of(kind);
    FhirReader reader = new FhirReader(Catalogue.standard());
    for (int i = 0; i < exams(kind); i++) {
      Exam exam = exams.next();
      String json = writer.write(exam);
      Exam read = reader.read(json.getBytes(UTF_8)).orThrow();
      assertEquals(exam, read, "seed " + seed + ", examination " + i);
    }
  }
}
