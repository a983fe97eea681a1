package org.isopter.mapper.fhir;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.derive.Derivations;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Status;
import org.junit.jupiter.api.Test;

/**
 * What a server holds of an earlier version, or of a record that was amended, is taken back: FHIR
 * R4, ObservationStatus, "entered-in-error".
 */
class TakenBackTest {

  private static final FhirWriter WRITER = FhirWriter.of(BundleKind.TRANSACTION);
  private static final int EXAMS = 60;

  private final ExamSampler sampler =
      new ExamSampler(Catalogue.standard().all(), new Random(20261128L));

  /** Returns type, identifier and status of each resource that has an identifier. */
  private static List<String> sent(String bundle) {
    List<String> sent = new ArrayList<>();
    for (Raw.Obj entry : RawJson.OWN.read(bundle).orThrow().objects("entry")) {
      Raw.Obj resource = entry.object("resource").orElseThrow();
      String status = resource.string("status").orElse("");
      String url = entry.object("request").orElseThrow().string("url").orElseThrow();
      sent.add(url + " " + status);
    }
    return sent;
  }

  @Test
  void sendsWhatAnEarlierVersionHeldAsAnError() {
    for (int i = 0; i < EXAMS; i++) {
      Exam before = sampler.next();
      int left = before.facts().size() / 2;
      Exam now = new Exam(before.header(), before.facts().subList(0, left));
      List<String> taken = new ArrayList<>(sent(WRITER.takingBack(before).write(now)));
      List<String> had = sent(WRITER.write(before));
      taken.removeAll(sent(WRITER.write(now)));
      assertEquals(before.facts().size() - left, taken.size(), before.toString());
      for (String one : taken) {
        String url = one.substring(0, one.indexOf(' '));
        assertEquals(url + " entered-in-error", one);
        assertEquals(1, had.stream().filter(other -> other.startsWith(url + " ")).count(), one);
      }
    }
  }

  /** A statement that no longer follows would stay on the server as well. */
  @Test
  void takesBackWhatFollowedFromWhatIsGone() {
    FhirWriter writer = WRITER.withDerived();
    int derived = 0;
    for (int i = 0; i < EXAMS; i++) {
      Exam before = sampler.next();
      Exam now = new Exam(before.header(), List.of());
      int had = Derivations.of(before).size();
      List<String> taken = new ArrayList<>(sent(writer.takingBack(before).write(now)));
      taken.removeAll(sent(writer.write(now)));
      assertEquals(before.facts().size() + had, taken.size(), before.toString());
      assertTrue(taken.stream().allMatch(one -> one.endsWith(" entered-in-error")));
      derived += had;
    }
    assertTrue(derived > 0);
  }

  @Test
  void sendsAnAmendedRecordAsAnErrorWhole() {
    Exam before = sampler.next();
    Exam now = sampler.next();
    List<String> taken = new ArrayList<>(sent(WRITER.takingBack(before).write(now)));
    taken.removeAll(sent(WRITER.write(now)));
    assertEquals(before.facts().size() + 2, taken.size());
    assertEquals(taken.size(), taken.stream().filter(s -> s.endsWith(" entered-in-error")).count());
  }

  @Test
  void readsThePresentRecordAlone() {
    ForeignReader reader = new ForeignReader(Catalogue.standard(), Options.usual());
    for (int i = 0; i < EXAMS; i++) {
      Exam before = sampler.next();
      Exam now = new Exam(before.header(), before.facts().subList(0, before.facts().size() / 2));
      String sent = WRITER.takingBack(before).write(now);
      List<Exam> read = reader.read(sent).orThrow().exams().stream().map(ReadExam::exam).toList();
      boolean retracted = before.header().status() == Status.ENTERED_IN_ERROR;
      assertEquals(retracted ? read : List.of(now), read, sent);
    }
  }

  @Test
  void refusesToTakeBackOutsideATransaction() {
    FhirWriter writer = FhirWriter.of(BundleKind.COLLECTION);
    assertThrows(IllegalStateException.class, () -> writer.takingBack(sampler.next()));
  }
}
