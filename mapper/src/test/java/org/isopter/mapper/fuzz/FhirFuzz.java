package org.isopter.mapper.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirReader;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.foreign.Conservation;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.ForeignWriter;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.json.Limits;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Result;

/**
 * Any bytes as FHIR JSON, of ours and of others: what is taken reads the same when it was written
 * again, and every leaf of the input is taken or carried.
 */
public final class FhirFuzz {

  private static final Catalogue CATALOGUE = Catalogue.standard();
  private static final FhirReader STRICT = new FhirReader(CATALOGUE);
  private static final ForeignReader FOREIGN = new ForeignReader(CATALOGUE, Options.usual());
  private static final ForeignWriter WRITER = ForeignWriter.of(BundleKind.COLLECTION);

  private static final RawJson RAW = new RawJson(Limits.USUAL);
  private static final String OURS = Canonical.BASE;

  private FhirFuzz() {}

  /** Tries one input. */
  public static void fuzzerTestOneInput(byte[] input) {
    strict(input);
    foreign(new String(input, UTF_8));
  }

  private static void strict(byte[] input) {
    Result<Exam> read = STRICT.read(input);
    Refusals.check(read.faults());
    if (read instanceof Result.Ok<Exam> ok) {
      for (BundleKind kind : BundleKind.values()) {
        assertEquals(read, STRICT.read(FhirWriter.of(kind).write(ok.value())));
      }
    }
  }

  private static void foreign(String json) {
    Result<Reading> read = FOREIGN.read(json);
    Refusals.check(read.faults());
    if (read instanceof Result.Ok<Reading> ok) {
      if (!RawJson.write(RAW.read(json).orThrow()).contains(OURS)) {
        // Of a bundle of ours, what is around the examination follows from it.
        Conservation.check(ok.value(), json, json);
      }
      ok.value().exams().forEach(FhirFuzz::again);
      carried(ok.value());
    }
  }

  private static void again(ReadExam exam) {
    String written = WRITER.write(exam);
    Reading second = FOREIGN.read(written).orThrow();
    assertEquals(1, second.exams().size(), written);
    assertEquals(exam.exam(), second.exams().get(0).exam(), written);
    assertEquals(exam.carried(), second.exams().get(0).carried(), written);
  }

  private static void carried(Reading first) {
    if (first.carried().isEmpty()) {
      return;
    }
    String written = WRITER.write(first.carried());
    Reading second = FOREIGN.read(written).orThrow();
    assertEquals(0, second.exams().size(), written);
    assertEquals(first.carried(), second.carried(), written);
  }
}
