package org.isopter.mapper.fhir;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** The laws of a finding; one that is added to the catalogue gets them without a line here. */
class LawsTest {

  private static final long SEED = Long.getLong("seed", 41L);
  private static final int EXAMS = 20;

  /** Each gives some thirty changed bundles, so that a few try every place of the description. */
  private static final int CHANGED_EXAMS = 6;

  private static final FhirWriter WRITER = FhirWriter.of(BundleKind.COLLECTION);
  private static final FhirReader READER = new FhirReader(MadeUp.CATALOGUE);
  private static final RecordReader RECORDS = new RecordReader(MadeUp.CATALOGUE);

  @TestFactory
  Stream<DynamicTest> fhirGivesBackWhatWasWritten() {
    return forEach((exam, name) -> assertEquals(exam, read(WRITER.write(exam)).orThrow(), name));
  }

  @TestFactory
  Stream<DynamicTest> recordGivesBackWhatWasWritten() {
    return forEach(
        (exam, name) -> {
          for (RecordFormat format : RecordFormat.values()) {
            String text = new RecordWriter().write(exam, format);
            assertEquals(exam, RECORDS.read(text, format).orThrow(), name);
          }
        });
  }

  @TestFactory
  Stream<DynamicTest> valueGivesBackItsFirstOrderForm() {
    return forEach(
        (exam, name) ->
            exam.facts()
                .forEach(
                    fact ->
                        assertEquals(
                            fact.outcome().ifFound().map(value -> Result.ok((Object) value)),
                            fact.panel().map(panel -> fact.finding().layout().decode(panel)),
                            name)));
  }

  @TestFactory
  Stream<DynamicTest> readerRefusesOneChangeOutsideTheDescription() {
    return forEach(
        CHANGED_EXAMS,
        (exam, name) -> {
          String json = WRITER.write(exam);
          for (Mutation mutation : Mutation.values()) {
            mutation.of(json).forEach(changed -> refuses(mutation, changed, name));
          }
        });
  }

  private static void refuses(Mutation mutation, String changed, String name) {
    Result<Exam> read = read(changed);
    assertFalse(read.isOk(), name + ", " + mutation);
    for (Fault fault : read.faults()) {
      assertTrue(fault.path().startsWith("Bundle.entry["), fault.toString());
      assertFalse(fault.seen().isBlank() || fault.wanted().isBlank(), fault.toString());
    }
  }

  private static Stream<DynamicTest> forEach(BiConsumer<Exam, String> law) {
    return forEach(EXAMS, law);
  }

  private static Stream<DynamicTest> forEach(int exams, BiConsumer<Exam, String> law) {
    return MadeUp.CATALOGUE.all().stream()
        .map(finding -> DynamicTest.dynamicTest(finding.id(), () -> samples(finding, exams, law)));
  }

  private static void samples(Finding<?> finding, int count, BiConsumer<Exam, String> law) {
    ExamSampler exams = new ExamSampler(List.of(finding), new Random(SEED));
    for (int i = 0; i < count; i++) {
      law.accept(exams.next(), finding + ", seed " + SEED + ", examination " + i);
    }
  }

  private static Result<Exam> read(String json) {
    return READER.read(json);
  }
}
