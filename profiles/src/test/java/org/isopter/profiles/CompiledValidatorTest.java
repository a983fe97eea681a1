package org.isopter.profiles;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.isopter.profiles.compiled.CompiledValidator;
import org.isopter.profiles.compiled.Verdict;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * The compiled checks decide as the reference validator does, which knows nothing of them: HAPI's
 * FhirInstanceValidator on the same profiles. Or they leave it to that.
 */
class CompiledValidatorTest {

  private static final long SEED = Long.getLong("seed", 20261127L);
  private static final int EDITS = Integer.getInteger("edits", 3);

  private final CompiledValidator compiled = new CompiledValidator(Catalogue.standard());
  private final ProfileValidator reference = ProfileValidator.standard();

  private final String pressure =
      Wire.observation(Fact.of(Pressures.INTRAOCULAR, Site.RIGHT, Quantity.of("14", Unit.MM_HG)))
          .toString();

  @TestFactory
  Stream<DynamicTest> decidesAsTheReferenceValidatorDoes() {
    Random random = new Random(SEED);
    ExamSampler facts = new ExamSampler(Catalogue.standard().all(), random);
    return Catalogue.standard().all().stream()
        .map(finding -> tried(finding, Wire.observation(facts.fact(finding)).toString(), random));
  }

  private DynamicTest tried(Finding<?> finding, String json, Random random) {
    List<Edits.Edit> edits = new ArrayList<>(Edits.of(json));
    Collections.shuffle(edits, random);
    return DynamicTest.dynamicTest(
        finding.id(),
        () -> {
          assertEquals(new Verdict.Valid(), compiled.judge(json), json);
          edits.stream().limit(EDITS).forEach(this::compare);
        });
  }

  private void compare(Edits.Edit edit) {
    Verdict verdict = compiled.judge(edit.json());
    if (verdict instanceof Verdict.Undecided) {
      return;
    }
    List<ValidationMessage> said = reference.validate(edit.json());
    String about = edit.what() + ": " + verdict + ", seed " + SEED + ", reference " + said;
    assertEquals(verdict instanceof Verdict.Invalid, isRefused(said), about);
    if (verdict instanceof Verdict.Valid) {
      assertEquals(List.of(), said, about);
    }
  }

  private static boolean isRefused(List<ValidationMessage> said) {
    return said.stream().anyMatch(ValidationMessage::isError);
  }

  @Test
  void decidesOfAVisitAsTheReferenceValidatorDoes() {
    String visit = BundleTest.BUNDLE.formatted(pressure);
    assertEquals(new Verdict.Valid(), compiled.judge(visit));
    List<Edits.Edit> edits = new ArrayList<>(Edits.of(visit));
    Collections.shuffle(edits, new Random(SEED));
    edits.stream().limit(20L * EDITS).forEach(this::compare);
  }

  @Test
  void refusesByItselfWhatLacksWhatAProfileWants() {
    Map<String, String> edits =
        Edits.of(pressure).stream()
            .filter(edit -> edit.what().startsWith("remove "))
            .collect(Collectors.toMap(edit -> edit.what().substring(7), Edits.Edit::json));
    for (String path :
        List.of(
            "/bodySite",
            "/bodySite/coding/0/code",
            "/category",
            "/code/coding/1",
            "/effectiveDateTime",
            "/identifier",
            "/subject",
            "/valueQuantity",
            "/valueQuantity/value",
            "/valueQuantity/system",
            "/valueQuantity/code")) {
      String json = Objects.requireNonNull(edits.get(path), path);
      assertInstanceOf(Verdict.Invalid.class, compiled.judge(json), path);
    }
  }

  @Test
  void leavesToTheReferenceWhatItDoesNotKnow() {
    for (String more :
        List.of(
            "\"interpretation\":[{\"text\":\"high\"}],",
            "\"extension\":[{\"url\":\"https://elsewhere.example/x\",\"valueString\":\"x\"}],",
            "\"contained\":[],",
            "\"_status\":{\"id\":\"a\"},",
            "\"status\":\"final\",\"status\":\"final\",")) {
      assertInstanceOf(
          Verdict.Undecided.class,
          compiled.judge(pressure.replace("\"status\":\"final\",", more + "\"status\":\"final\",")),
          more);
    }
  }

  @Test
  void takesNoNumberWhoseDigitsMayBeReadInTwoWays() {
    for (String number : List.of("1.4e1", "14E0", "014", "1000000000000000000014", "-0.0e0")) {
      String json = pressure.replace("\"value\":14", "\"value\":" + number);
      assertInstanceOf(Verdict.Undecided.class, compiled.judge(json), number);
    }
  }

  @Test
  void leavesMarkupToTheReference() {
    String plain = pressure.replace("\"value\":\"p-1\"", "\"value\":\"p < 1 & > 0\"");
    assertEquals(new Verdict.Valid(), compiled.judge(plain));
    assertEquals(List.of(), reference.validate(plain));
    String markup = pressure.replace("\"value\":\"p-1\"", "\"value\":\"<b>p-1</b>\"");
    assertInstanceOf(Verdict.Undecided.class, compiled.judge(markup));
  }

  @Test
  void leavesADisplayThatItDoesNotKnowToTheReference() {
    String json = pressure.replace("\"Entire right eye (body structure)\"", "\"Left eye\"");
    assertTrue(json.contains("Left eye"));
    assertInstanceOf(Verdict.Undecided.class, compiled.judge(json));
  }

  @Test
  void saysWhereAndWhatInTheWordsOfTheReference() {
    for (String json :
        List.of(
            pressure.replace("mm[Hg]", "kPa"),
            pressure.replace("41633001", "41633002"),
            pressure.replace("\"value\":14", "\"value\":99"),
            pressure.replace("\"value\":14", "\"comparator\":\"<\",\"value\":14"),
            pressure.replace("\"final\"", "\"corrected\""),
            pressure.replaceFirst("\"valueQuantity\":\\{[^}]*}", "\"valueInteger\":14"),
            BundleTest.BUNDLE.formatted(pressure.replace("\"value\":14", "\"value\":99")))) {
      assertEquals(
          words(reference.validate(json)), words(QuickValidator.standard().validate(json)));
      assertInstanceOf(Verdict.Invalid.class, compiled.judge(json), json);
    }
  }

  private static Set<String> words(List<ValidationMessage> messages) {
    return messages.stream()
        .map(ValidationMessage::toString)
        .collect(Collectors.toCollection(TreeSet::new));
  }
}
