package org.isopter.mapper.foreign.returned;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Status;
import org.junit.jupiter.api.Test;

/**
 * Some or one of the observations of an examination read exact without the rest of it, beside those
 * of other examinations, in any order and in any wrapping. {@code -Down.observations=12000} tries
 * more.
 */
class OwnObservationsTest {

  private static final long SEED = Long.getLong("seed", 20261128L);
  private static final int OBSERVATIONS = Integer.getInteger("own.observations", 400);
  private static final int TOGETHER = 5;
  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());

  private final Random random = new Random(SEED);
  private final ExamSampler sampler = new ExamSampler(Catalogue.standard().all(), random);
  private final Wrapping wrapping = new Wrapping(random);

  /** Returns the observations of the facts of an examination. */
  private static List<Raw.Obj> observations(Exam exam) {
    Raw.Obj bundle = Wrapping.raw(FhirWriter.of(BundleKind.COLLECTION).write(exam));
    return bundle.objects("entry").stream()
        .map(entry -> entry.object("resource").orElseThrow())
        .filter(resource -> Neighbours.type(resource).equals("Observation"))
        .filter(resource -> !ReturnedBundle.isPanel(resource))
        .toList();
  }

  @Test
  void readsSomeOfAnExaminationInAnyWrapping() {
    Map<Status, Integer> tried = new HashMap<>();
    for (int done = 0; done < OBSERVATIONS; ) {
      Map<Identifier, Exam> exams = new HashMap<>();
      Map<Identifier, Integer> sizes = new HashMap<>();
      List<Raw.Obj> some = new ArrayList<>();
      int count = 1 + random.nextInt(TOGETHER);
      while (some.size() < count) {
        Exam exam = sampler.next();
        if (exams.putIfAbsent(exam.header().id(), exam) == null) {
          List<Raw.Obj> all = new ArrayList<>(observations(exam));
          Collections.shuffle(all, random);
          int few = random.nextBoolean() ? 1 : 1 + random.nextInt(all.size());
          some.addAll(all.subList(0, few));
          sizes.put(exam.header().id(), few);
          tried.merge(exam.header().status(), 1, Integer::sum);
        }
      }
      List<Raw> documents = wrapping.documents(some);
      assertRead(exams, sizes, documents);
      done += some.size();
    }
    assertEquals(Status.values().length, tried.size(), "each status was tried");
  }

  private static void assertRead(
      Map<Identifier, Exam> exams, Map<Identifier, Integer> sizes, List<Raw> documents) {
    String seen = "seed " + SEED + ": " + documents.stream().map(RawJson::write).toList();
    Reading reading = READER.readTogether(documents);
    reading.resources().stream()
        .filter(one -> Neighbours.type(one.resource()).equals("Observation"))
        .forEach(
            one ->
                assertTrue(
                    one.outcome() instanceof ResourceOutcome.Exact, () -> one + " of " + seen));
    assertEquals(exams.size(), reading.exams().size(), seen);
    for (ReadExam read : reading.exams()) {
      Exam exam = exams.get(read.exam().header().id());
      assertSameHeader(exam.header(), read.exam().header(), seen);
      assertEquals(sizes.get(exam.header().id()), read.exam().facts().size(), seen);
      for (Fact<?> fact : read.exam().facts()) {
        assertTrue(
            exam.facts().stream().anyMatch(one -> isSame(exam, one, read.exam(), fact)),
            () -> fact + " is not in " + exam + ": " + seen);
      }
    }
  }

  /** What an observation says of its examination; setting, age and remark are the panel's. */
  private static void assertSameHeader(Header wanted, Header read, String seen) {
    assertEquals(wanted.subject(), read.subject(), seen);
    assertEquals(wanted.performer(), read.performer(), seen);
    assertEquals(wanted.status(), read.status(), seen);
    assertEquals(wanted.amends(), read.amends(), seen);
  }

  private static boolean isSame(Exam exam, Fact<?> one, Exam read, Fact<?> fact) {
    return one.withoutTime().equals(fact.withoutTime())
        && one.at()
            .orElse(exam.header().performed())
            .isEqual(fact.at().orElse(read.header().performed()));
  }
}
