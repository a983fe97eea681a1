package org.isopter.mapper;

import static java.nio.charset.StandardCharsets.UTF_8;

import ca.uhn.fhir.context.FhirContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.hl7.fhir.r4.model.Bundle;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirReader;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** One examination of about 45 observations, both ways, beside the general libraries. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
public class ConversionBench {

  private static final FhirContext HAPI = FhirContext.forR4Cached();
  private static final JsonMapper JACKSON = new JsonMapper();

  private final Exam exam = exam();
  private final FhirWriter writer = FhirWriter.of(BundleKind.COLLECTION);
  private final FhirReader reader = new FhirReader(Catalogue.standard());
  private final String json = writer.write(exam);
  private final byte[] bytes = json.getBytes(UTF_8);
  private final JsonNode tree = JACKSON.readTree(json);

  private static Exam exam() {
    ExamSampler sampler = new ExamSampler(Catalogue.standard().all(), new Random(1));
    List<Fact<?>> facts = new ArrayList<>();
    for (Finding<?> finding : Catalogue.standard().all()) {
      facts.add(sampler.fact(finding));
      if (facts.size() < 45) {
        facts.add(sampler.fact(finding));
      }
    }
    return new Exam(sampler.next().header(), facts);
  }

  /** Record to FHIR JSON. */
  @Benchmark
  public String isopterWrite() {
    return writer.write(exam);
  }

  /** FHIR JSON to record. */
  @Benchmark
  public Exam isopterRead() {
    return reader.read(bytes).orThrow();
  }

  /** Baseline: the same observations as HAPI objects, encoded. */
  @Benchmark
  public String hapiBuildAndEncode() {
    return HAPI.newJsonParser().encodeResourceToString(HapiBaseline.bundle(exam));
  }

  /** Baseline: HAPI parsing the same bytes into objects. */
  @Benchmark
  public Bundle hapiParse() {
    return HAPI.newJsonParser().parseResource(Bundle.class, json);
  }

  /** Baseline: Jackson writing the same document from a tree. */
  @Benchmark
  public String jacksonTreeWrite() {
    return JACKSON.writeValueAsString(tree);
  }

  /** Baseline: Jackson parsing the same bytes into a tree. */
  @Benchmark
  public JsonNode jacksonTreeParse() {
    return JACKSON.readTree(bytes);
  }
}
