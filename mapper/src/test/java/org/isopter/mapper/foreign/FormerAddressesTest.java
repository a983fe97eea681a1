package org.isopter.mapper.foreign;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirReader;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.value.Result;
import org.junit.jupiter.api.Test;

/**
 * Bundles with the addresses and the codes of units that we published first are read as they were.
 */
class FormerAddressesTest {

  private static final int EXAMS = 50;

  private final ExamSampler sampler =
      new ExamSampler(Catalogue.standard().all(), new Random(20261128L));

  private static String former(Exam exam) {
    String former =
        FhirWriter.of(BundleKind.COLLECTION)
            .withDerived()
            .write(exam)
            .replace(
                "https://w3id.org/isopter/identifier/", "https://isopter.example/fhir/identifier/")
            .replace("https://w3id.org/isopter/fhir/", "https://isopter.example/fhir/")
            .replaceAll(
                "\"code\":\"\\{(logMAR|decimal|log_units|M_units|N_points)}\"", "\"code\":\"1\"");
    assertTrue(former.contains("isopter.example") && !former.contains("w3id.org"), former);
    return former;
  }

  @Test
  void areReadByTheReaderOfOurOwnForm() {
    FhirReader reader = new FhirReader(Catalogue.standard());
    for (int i = 0; i < EXAMS; i++) {
      Exam exam = sampler.next();
      String former = former(exam);
      assertEquals(Result.ok(exam), reader.read(former));
      assertEquals(Result.ok(exam), reader.read(former.getBytes(StandardCharsets.UTF_8)));
    }
  }

  @Test
  void areReadAmongTheRecordsOfOthers() {
    ForeignReader reader = new ForeignReader(Catalogue.standard(), Options.usual());
    for (int i = 0; i < EXAMS; i++) {
      Exam exam = sampler.next();
      Reading reading = reader.read(former(exam)).orThrow();
      assertEquals(exam, reading.exams().get(0).exam());
      assertEquals(reading.resources().size(), reading.count("exact"));
    }
  }
}
