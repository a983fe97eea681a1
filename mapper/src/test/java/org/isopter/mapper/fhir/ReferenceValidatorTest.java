package org.isopter.mapper.fhir;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.profiles.ProfileValidator;
import org.isopter.profiles.ValidationMessage;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The reference validator, which knows nothing of our reader, is the witness of the writer. */
class ReferenceValidatorTest {

  private static final long SEED = Long.getLong("seed", 43L);
  private static final ProfileValidator VALIDATOR = ProfileValidator.standard();

  @TestFactory
  Stream<DynamicTest> acceptsWhatIsWritten() {
    return forEach(
        (exam, name) ->
            assertEquals(
                List.of(),
                VALIDATOR.validate(FhirWriter.of(BundleKind.COLLECTION).write(exam)),
                name));
  }

  @TestFactory
  Stream<DynamicTest> refusesWhatTheReaderRefuses() {
    return forEach(
        (exam, name) -> {
          String json = FhirWriter.of(BundleKind.COLLECTION).write(exam);
          Random random = new Random(SEED);
          for (Mutation mutation : half(name)) {
            List<String> changed = mutation.of(json);
            if (!changed.isEmpty()) {
              refused(mutation, changed.get(random.nextInt(changed.size())), name + " " + mutation);
            }
          }
        });
  }

  /** Half of the changes to each finding, and each of them to half of the findings: it is slow. */
  private static List<Mutation> half(String finding) {
    return Stream.of(Mutation.values())
        .filter(mutation -> Math.floorMod((finding + mutation.name()).hashCode(), 2) == 0)
        .toList();
  }

  @Test
  void acceptsEveryKindOfBundle() {
    Exam exam = new ExamSampler(Catalogue.standard().all(), new Random(SEED)).next();
    for (BundleKind kind : BundleKind.values()) {
      // A document's type is only recommended to come from FHIR's own list: information, no more.
      List<ValidationMessage> said =
          VALIDATOR.validate(FhirWriter.of(kind).write(exam)).stream()
              .filter(message -> message.severity() != ValidationMessage.Severity.INFORMATION)
              .toList();
      assertEquals(List.of(), said, kind + ", seed " + SEED);
    }
  }

  private static void refused(Mutation mutation, String json, String name) {
    List<ValidationMessage> errors =
        VALIDATOR.validate(json).stream()
            .filter(message -> message.isError() || !mutation.isRefused())
            .toList();
    assertFalse(errors.isEmpty(), name + " was accepted");
    assertFalse(errors.get(0).path().isBlank(), errors.toString());
  }

  private static Stream<DynamicTest> forEach(BiConsumer<Exam, String> law) {
    return Catalogue.standard().all().stream()
        .map(finding -> DynamicTest.dynamicTest(finding.id(), () -> samples(finding, law)));
  }

  /** All samples of a finding in one examination: the validator is slow, its verdicts are not. */
  private static void samples(Finding<?> finding, BiConsumer<Exam, String> law) {
    ExamSampler sampler = new ExamSampler(List.of(finding), new Random(SEED));
    List<Fact<?>> facts = new ArrayList<>();
    for (int i = 0; i < 2; i++) {
      facts.add(sampler.fact(finding));
    }
    law.accept(new Exam(sampler.next().header(), facts), finding + ", seed " + SEED);
  }
}
