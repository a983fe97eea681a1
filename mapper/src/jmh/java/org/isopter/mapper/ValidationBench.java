package org.isopter.mapper;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.profiles.ProfileValidator;
import org.isopter.profiles.ValidationMessage;
import org.isopter.profiles.compiled.CompiledValidator;
import org.isopter.profiles.compiled.Verdict;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/**
 * A bundle with an observation of every finding, judged by compiled checks and by the reference.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
public class ValidationBench {

  private final CompiledValidator compiled = new CompiledValidator(Catalogue.standard());
  private final ProfileValidator reference = ProfileValidator.standard();
  private final String json = decided();

  /**
   * Returns a bundle that the compiled checks decide: they would leave one with odd texts early.
   */
  private String decided() {
    return IntStream.iterate(1, seed -> seed + 1)
        .mapToObj(seed -> FhirWriter.of(BundleKind.COLLECTION).write(exam(seed)))
        .filter(bundle -> compiled.judge(bundle) instanceof Verdict.Valid)
        .findFirst()
        .orElseThrow();
  }

  private static Exam exam(int seed) {
    ExamSampler sampler = new ExamSampler(Catalogue.standard().all(), new Random(seed));
    List<Fact<?>> facts = new ArrayList<>();
    for (Finding<?> finding : Catalogue.standard().all()) {
      facts.add(sampler.fact(finding));
    }
    return new Exam(sampler.next().header(), facts);
  }

  /** The compiled checks. */
  @Benchmark
  public Verdict compiled() {
    return compiled.judge(json);
  }

  /** Baseline: the reference validator, its definitions loaded. */
  @Benchmark
  public List<ValidationMessage> reference() {
    return reference.validate(json);
  }
}
