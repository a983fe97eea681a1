package org.isopter.profiles;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.isopter.model.answer.tissue.Tonometry;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Shapes;
import org.isopter.model.finding.Span;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Term;
import org.isopter.model.value.Unit;
import org.isopter.profiles.artefact.ArtefactText;
import org.isopter.profiles.artefact.Artefacts;
import org.junit.jupiter.api.Test;

/** A finding that nobody thought of gets its artefacts and its checks from its description. */
class MadeUpFindingTest {

  private record Glow(Term colour, Optional<Outcome<Quantity>> reach, Optional<Boolean> steady) {}

  private static final Part<Glow, Quantity> REACH =
      Part.orAbsent(
          "reach",
          "Reach of the glow",
          Shapes.measure(1, Span.of(Unit.METRE, "-2", "3"), Span.of(Unit.INCH, "1", "40")),
          Glow::reach);

  private static final Part<Glow, Boolean> STEADY =
      Part.optional("steady", "Steady", Shapes.truth(), Glow::steady);

  private static final Finding<Glow> GLOW =
      Finding.of("glow", "Glow of the eye in the dark")
          .value(
              Layout.of(
                  Shapes.oneOfWords("glow-colour", "green", "deep-red"),
                  Glow::colour,
                  List.of(REACH, STEADY),
                  (colour, parts) -> new Glow(colour, parts.outcome(REACH), parts.find(STEADY))))
          .by(Tonometry.class)
          .at(Site.EACH_EYE)
          .build();

  private final Catalogue catalogue = Catalogue.standard().plus(GLOW);

  @Test
  void getsItsProfileItsAnswersAndItsCodes() {
    Set<String> before = names(Catalogue.standard());
    Set<String> after = names(catalogue);
    after.removeAll(before);
    assertEquals(
        Set.of(
            "StructureDefinition-glow.json",
            "ValueSet-glow-colour.json",
            "CodeSystem-glow-colour.json"),
        after);
  }

  @Test
  void isValidatedAsDescribedAndEachOfItsRulesCanBeBroken() {
    ProfileValidator validator = new ProfileValidator(Catalogue.of(List.of(GLOW)));
    long seed = 20_260_302;
    ExamSampler facts = new ExamSampler(List.of(GLOW), new Random(seed));
    for (int i = 0; i < 20; i++) {
      String json = Wire.observation(facts.fact(GLOW)).toString();
      assertEquals(List.of(), validator.validate(json), "seed " + seed + ": " + json);
    }
    InvariantPairs pairs = new InvariantPairs(Catalogue.of(List.of(GLOW)));
    List<String> own =
        Artefacts.of(Catalogue.of(List.of(GLOW))).rules().keySet().stream()
            .filter(key -> key.startsWith("glow-"))
            .toList();
    assertEquals(
        Set.of(
            "glow-site",
            "glow-present",
            "glow-reach-unit",
            "glow-reach-range",
            "glow-reach-decimals",
            "glow-reach-outcome"),
        Set.copyOf(own));
    own.forEach(key -> assertTrue(pairs.search(key, validator).message().isError(), key));
  }

  private static Set<String> names(Catalogue of) {
    return Artefacts.of(of).resources().stream()
        .map(ArtefactText::fileName)
        .collect(Collectors.toCollection(TreeSet::new));
  }
}
