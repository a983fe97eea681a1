package org.isopter.model.clinical;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.isopter.model.clinical.statement.Caution;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.value.AcuityText;
import org.junit.jupiter.api.Test;

/** What must never be said, whatever the facts. */
class NeverSaidTest {

  /** What no statement says. */
  private static final Map<String, Pattern> FORBIDDEN =
      Map.of(
          "a field is never normal or full by confrontation",
          Pattern.compile(
              "fields? (is|are|was|were)? ?(normal|full)|(normal|full) (visual )?fields?"),
          "an afferent defect is never in both eyes",
          Pattern.compile("afferent defect (in |of )?both|both eyes[^.;]* afferent"),
          "nothing reassures",
          Pattern.compile(
              "\\b(benign|harmless|reassur\\w*|innocent|unremarkable|nothing (wrong|abnormal)"
                  + "|within normal|safely?|physiological)\\b|\\bis (usual|normal|healthy)\\b"),
          "inequality never comes from an optic nerve",
          Pattern.compile("optic nerve[^.;]*(unequal|larger|smaller|anisocoria)"),
          "inequality never proves a sympathetic lesion",
          Pattern.compile("(prove|confirm|means|shows|because of)[^.;]*(oculosympathetic|horner)"),
          "binasal loss is never of the radiation or the pituitary",
          Pattern.compile("nasal loss in both eyes.*(radiation|pituitary|occipital|tract)"),
          "a pituitary is never named",
          Pattern.compile("pituitary"),
          "nothing is a diagnosis, an advice or an urgency",
          Pattern.compile(
              "\\b(diagnos\\w*|refer|urgent\\w*|emergency|treat\\w*|should|must|recommend\\w*"
                  + "|advise\\w*|prove[sd]?|confirm\\w*)\\b"));

  private static final Pattern ACUITY_FACT =
      Pattern.compile(
          "^(?:first |second |earlier |later |near |presenting )?acuity (.+?)(?: \\(.*)?$");

  /** Texts whose wording was checked: the facts differ far more often than the words. */
  private final Set<String> seen = new HashSet<>();

  private static final List<String> LOBES = List.of("temporal optic", "parietal", "occipital");

  @Test
  void holdsForEveryStatement() {
    Map<String, Integer> counts = new HashMap<>();
    AllStatements.forEach(
        statement -> {
          checkWording(statement);
          checkPupils(statement);
          checkFields(statement);
          checkAcuity(statement);
          counts.merge(statement.id(), 1, Integer::sum);
        });
    assertEquals(KINDS, new TreeSet<>(counts.keySet()));
    int all = counts.values().stream().mapToInt(Integer::intValue).sum();
    assertTrue(all > 100_000, all + " statements");
  }

  /** Every kind of statement there is: a new one does not pass unseen. */
  private static final Set<String> KINDS =
      new TreeSet<>(
          List.of(
              "acuity.change",
              "acuity.equivalents",
              "acuity.low-vision",
              "acuity.mean",
              "acuity.order",
              "acuity.partial-line",
              "acuity.pinhole",
              "acuity.presenting",
              "acuity.unusual-line",
              "colour.plates",
              "colour.red-saturation",
              "disc.cup",
              "disc.expected-cup",
              "disc.frisen",
              "driving.figure",
              "field.blind-spot-difference",
              "field.blind-spot-height",
              "field.blind-spot-width",
              "field.places",
              "field.stage",
              "impairment.eye",
              "impairment.field",
              "impairment.near",
              "impairment.person",
              "lens.power-vector",
              "lens.prism-angle",
              "lens.same",
              "lens.spherical-equivalent",
              "lens.transposed",
              "lens.vertex",
              "lids.difference",
              "near.equivalents",
              "near.jaeger",
              "near.points",
              "orbit.protrusion",
              "perimetry.flag",
              "perimetry.index",
              "perimetry.threshold",
              "pupils.anisocoria",
              "pupils.defect-grade",
              "pupils.defect-log-units",
              "pupils.light-and-dark",
              "pupils.light-near",
              "pupils.near-no-better",
              "pupils.table",
              "retina.retinopathy-level"));

  private void checkWording(Statement statement) {
    if (!seen.add(statement.text())) {
      return;
    }
    String text = statement.text().toLowerCase(Locale.ROOT);
    FORBIDDEN.forEach(
        (law, pattern) -> assertFalse(pattern.matcher(text).find(), () -> law + ": " + statement));
    assertTrue(text.endsWith("."), statement.toString());
  }

  private static void checkPupils(Statement statement) {
    if (!statement.id().equals("pupils.table")) {
      return;
    }
    String fits = statement.text().split("\\. All signs but one", -1)[0];
    boolean unequal =
        statement.because().stream()
            .anyMatch(fact -> fact.startsWith("UNEQUAL") && !fact.endsWith(" none"));
    assertFalse(unequal && fits.contains("optic nerve or disc"), statement.toString());
    // Nothing harmless is named without something grave before it.
    assertFalse(fits.startsWith("What fits in the table: inequality"), statement.toString());
  }

  private static void checkFields(Statement statement) {
    boolean complete =
        statement.because().size() == 2
            && statement.text().startsWith("Loss in the same half")
            && String.join(", ", statement.because()).split("(temporal|nasal) absent", -1).length
                == 5;
    boolean same = complete && !statement.text().contains("incongruous");
    boolean names = LOBES.stream().anyMatch(statement.text()::contains);
    assertFalse(same && names, statement.toString());
  }

  private static void checkAcuity(Statement statement) {
    if (statement.id().startsWith("field.") || statement.id().startsWith("pupils.")) {
      return;
    }
    for (String fact : statement.because()) {
      var acuity = ACUITY_FACT.matcher(fact);
      if (acuity.matches()) {
        assertTrue(AcuityText.parse(acuity.group(1)).isOk(), "no notation: " + fact);
      }
    }
    boolean unknown = statement.because().contains("letters per line: not stated");
    assertFalse(unknown && statement.certainty() != Certainty.CANNOT_TELL, statement.toString());
  }

  @Test
  void sayThatLocalRulesDecide() {
    assertTrue(Caution.TEXT.contains("not a diagnosis"));
    assertTrue(Caution.TEXT.contains("clinician"));
  }
}
