package org.isopter.model.derive;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.Alignments;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.clinical.colour.PlateRule;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.FactKey;
import org.junit.jupiter.api.Test;

/** What must never be said of an examination, whatever it holds. */
class NeverDerivedTest {

  private static final long SEED = Long.getLong("seed", 2026L);
  private static final int EXAMS = 2_000;

  private static final Map<String, Pattern> FORBIDDEN =
      Map.of(
          "a field is never normal or full by confrontation",
          Pattern.compile("fields? (is|are)? ?(normal|full)|(normal|full) (visual )?fields?"),
          "an afferent defect is never in both eyes",
          Pattern.compile("afferent defect (in |of )?both|both eyes[^.;]* afferent"),
          "inequality never comes from an optic nerve",
          Pattern.compile("optic nerve[^.;]*(unequal|larger|smaller|anisocoria)"),
          "inequality never proves a sympathetic lesion",
          Pattern.compile("(prove|confirm|means|shows|because of)[^.;]*(oculosympathetic|horner)"),
          "binasal loss is never of the radiation or the pituitary",
          Pattern.compile("nasal loss in both eyes.*(radiation|pituitary|occipital|tract)"),
          "nothing is a diagnosis, an advice or an urgency",
          Pattern.compile(
              "\\b(diagnos\\w*|refer|urgent\\w*|emergency|treat\\w*|should|must|recommend\\w*"
                  + "|advise\\w*|prove[sd]?|confirm\\w*)\\b"),
          "nothing reassures",
          Pattern.compile(
              "\\b(benign|harmless|reassur\\w*|innocent|unremarkable|nothing (wrong|abnormal)"
                  + "|no (cause|sign) for (concern|worry)|within normal|safely?|physiological)\\b"
                  + "|\\bhealthy (eye|pupil|disc)s?\\b|\\bis (usual|normal|healthy)\\b"),
          "no acuity stands without its notation",
          Pattern.compile("^(0\\.\\d+|\\d+) (is|equals)"));

  private final ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new Random(SEED));

  /** Statements that need many signs of the pupils are rare among all findings. */
  private final ExamSampler pupils =
      new ExamSampler(
          List.of(
              Pupils.SIZE,
              Pupils.SIZE,
              Pupils.SIZE,
              Pupils.DIRECT,
              Pupils.NEAR,
              Alignments.PROTRUSION),
          new Random(SEED));

  /** So are those of a pinhole, and of the fields and the cups of both eyes. */
  private final ExamSampler sight =
      new ExamSampler(
          List.of(Acuities.DISTANCE, Acuities.PINHOLE, Fields.CONFRONTATION, Discs.VERTICAL_CUP),
          new Random(SEED));

  @Test
  void holdsForEveryStatementOfRandomExaminations() {
    Set<String> kinds = new TreeSet<>();
    for (int i = 0; i < EXAMS; i++) {
      Exam exam = (i % 4 == 0 ? pupils : i % 4 == 1 ? sight : exams).next();
      for (Derived derived : Derivations.of(exam, List.of(PlateRule.values()))) {
        check(derived, exam, "seed " + SEED + ", examination " + i + ": " + derived);
        kinds.add(derived.statement().id());
      }
    }
    assertEquals(KINDS, kinds);
  }

  /** Every kind of statement there is: a new one does not pass unseen. */
  private static final Set<String> KINDS =
      new TreeSet<>(
          List.of(
              "acuity.equivalents",
              "acuity.partial-line",
              "acuity.pinhole",
              "acuity.presenting",
              "acuity.unusual-line",
              "colour.plates",
              "colour.red-saturation",
              "disc.cup",
              "disc.cup-difference",
              "disc.frisen",
              "field.blind-spot-difference",
              "field.blind-spot-height",
              "field.blind-spot-width",
              "field.places",
              "impairment.eye",
              "impairment.person",
              "lens.power-vector",
              "lens.spherical-equivalent",
              "lids.difference",
              "near.equivalents",
              "near.jaeger",
              "orbit.protrusion",
              "pupils.anisocoria",
              "pupils.light-and-dark",
              "pupils.light-near",
              "pupils.near-no-better",
              "pupils.table"));

  private static void check(Derived derived, Exam exam, String where) {
    String text = derived.statement().text().toLowerCase(Locale.ROOT);
    FORBIDDEN.forEach(
        (law, pattern) -> assertFalse(pattern.matcher(text).find(), law + ": " + where));
    boolean unknown = derived.statement().because().contains("letters per line: not stated");
    assertFalse(unknown && derived.value().isPresent(), where);
    for (FactKey key : derived.from()) {
      int at = exam.keys().indexOf(key);
      assertTrue(at >= 0, where);
      assertTrue(exam.facts().get(at).outcome().ifFound().isPresent(), where);
    }
  }

  @Test
  void saysNothingOfWhatWasNotDone() {
    for (int i = 0; i < 200; i++) {
      Exam exam = exams.next();
      List<Fact<?>> absent =
          exam.facts().stream().filter(fact -> fact.outcome().ifAbsent().isPresent()).toList();
      assertEquals(List.of(), Derivations.of(new Exam(exam.header(), absent)));
    }
  }

  @Test
  void givesTheSameNamesToTheSameExaminationAndNoNameTwice() {
    for (int i = 0; i < 200; i++) {
      Exam exam = exams.next();
      List<String> names = Derived.names(Derivations.of(exam));
      assertEquals(names, Derived.names(Derivations.of(exam)));
      assertEquals(names.size(), new HashSet<>(names).size(), names.toString());
    }
  }
}
