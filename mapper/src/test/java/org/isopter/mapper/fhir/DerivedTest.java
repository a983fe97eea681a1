package org.isopter.mapper.fhir;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.isopter.mapper.Goldens;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import org.isopter.profiles.ProfileValidator;
import org.isopter.profiles.ValidationMessage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.cfg.JsonNodeFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Derived statements stand beside the findings, and are computed again when they are read. */
class DerivedTest {

  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
          .build();
  private static final FhirReader READER = new FhirReader(Catalogue.standard());
  private static final FhirWriter WRITER = FhirWriter.of(BundleKind.COLLECTION).withDerived();
  private static final long SEED = Long.getLong("seed", 77L);

  /** How a resource is kept and shown, and what it says to people. */
  private static final Pattern TRANSPORT =
      Pattern.compile(
          "resource\\.(id|text\\.div|resourceType|device\\.display|valueString"
              + "|(code|method|note\\[\\d])\\.text)");

  /** Names the version of the rule set: a statement of another is read over. */
  private static final Pattern VERSION = Pattern.compile("resource\\.device\\..*");

  /** What a conforming sender may leave out or change without changing what is said. */
  private static final Pattern OPTIONAL = Pattern.compile(".*coding\\[0]\\.display");

  static Exam demo(String name) {
    Path file = Path.of("../docs/demo", name);
    try {
      return new RecordReader(Catalogue.standard())
          .read(Files.readString(file, UTF_8), RecordFormat.YAML)
          .orThrow();
    } catch (IOException missing) {
      throw new java.io.UncheckedIOException(missing);
    }
  }

  @ParameterizedTest
  @EnumSource(BundleKind.class)
  void readsTheSameExaminationWithThemAndWithout(BundleKind kind) {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new Random(SEED));
    for (int i = 0; i < 150; i++) {
      Exam exam = exams.next();
      String json = FhirWriter.of(kind).withDerived().write(exam);
      assertEquals(Result.ok(exam), READER.read(json), "seed " + SEED + ", examination " + i);
    }
  }

  @Test
  void writesThemOnlyWhenAsked() {
    Exam exam = demo("02-net-mender.yaml");
    assertEquals(List.of(), derived(FhirWriter.of(BundleKind.COLLECTION).write(exam)));
    assertFalse(derived(WRITER.write(exam)).isEmpty());
  }

  @Test
  void writesOneAsItWasReviewed() {
    String json = WRITER.indented().write(demo("02-net-mender.yaml"));
    String one =
        MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(derived(json).get(1)) + "\n";
    Goldens.check(Path.of("src/test/resources/golden/derived-statement.json"), one);
  }

  @Test
  void keepsThemOutOfThePanelOfWhatWasSeen() {
    JsonNode bundle = MAPPER.readTree(WRITER.write(demo("01-harbour-pilot.yaml")));
    String members = resources(bundle).map(one -> one.path("hasMember").toString()).toList() + "";
    for (JsonNode entry : bundle.path("entry")) {
      boolean derived = isDerived(entry.path("resource"));
      assertFalse(derived && members.contains(entry.path("fullUrl").asString()));
    }
  }

  @Test
  void refusesANumberThatTheFactsDoNotGive() {
    List<Fault> faults =
        changed(
            one -> one.path("valueQuantity") instanceof ObjectNode,
            one ->
                ((ObjectNode) one.path("valueQuantity"))
                    .put("value", new java.math.BigDecimal("-0.179")));
    assertEquals(1, faults.size(), faults.toString());
    String fault = faults.get(0).toString();
    assertTrue(fault.contains("resource.valueQuantity.value: saw -0.179"), fault);
    assertTrue(fault.contains("wanted -0.079, which the facts give"), fault);
  }

  @Test
  void refusesAStatementThatTheFactsDoNotGive() {
    List<Fault> faults =
        changed(
            any -> true,
            one -> ((ObjectNode) one.path("identifier").get(0)).put("value", "qh/derived/luck"));
    assertTrue(faults.get(0).path().endsWith("identifier[0].value"), faults.toString());
  }

  @Test
  void readsAStatementWhoseWordsAreOthers() {
    for (String name : List.of("code", "method")) {
      assertEquals(
          List.of(),
          changed(any -> true, one -> ((ObjectNode) one.path(name)).put("text", "Other words.")));
    }
    assertEquals(
        List.of(), changed(any -> true, one -> ((ObjectNode) one).remove("note")), "no notes");
    assertEquals(
        List.of(),
        changed(
            one -> one.has("valueString"), one -> ((ObjectNode) one).put("valueString", "Other.")));
  }

  @Test
  void refusesAStatementThatSaysNothing() {
    assertFalse(
        changed(
                one -> one.has("valueString"),
                one -> ((ObjectNode) one).remove(List.of("valueString")))
            .isEmpty());
  }

  @Test
  void readsOverWhatAnotherVersionOfTheRulesSaid() {
    for (Consumer<ObjectNode> version :
        List.<Consumer<ObjectNode>>of(
            one -> ((ObjectNode) one.path("device").path("identifier")).put("value", "2026-01-01"),
            one -> ((ObjectNode) one.path("device")).remove("identifier"),
            one -> one.remove("device"))) {
      assertEquals(List.of(), older(version, one -> {}));
      assertEquals(List.of(), older(version, one -> named(one, "qh-0302/derived/old.kind.left")));
      assertEquals(List.of(), older(version, one -> one.remove("derivedFrom")));
      assertFalse(older(version, one -> named(one, "qh-0302/other/old.kind.left")).isEmpty());
      assertFalse(older(version, one -> one.put("status", "cancelled")).isEmpty());
      assertFalse(older(version, DerivedTest::ofAnother).isEmpty());
      assertFalse(older(version, DerivedTest::fromElsewhere).isEmpty());
      assertFalse(older(version, one -> one.put("comment", "unknown element")).isEmpty());
    }
  }

  private static List<Fault> older(Consumer<ObjectNode> version, Consumer<ObjectNode> change) {
    return changed(
        any -> true,
        one -> {
          version.accept((ObjectNode) one);
          change.accept((ObjectNode) one);
        });
  }

  private static void named(ObjectNode statement, String name) {
    ((ObjectNode) statement.path("identifier").get(0)).put("value", name);
  }

  private static void ofAnother(ObjectNode statement) {
    ((ObjectNode) statement.path("subject").path("identifier")).put("value", "somebody-else");
  }

  private static void fromElsewhere(ObjectNode statement) {
    ((ObjectNode) statement.path("derivedFrom").get(0)).put("reference", "urn:uuid:nowhere");
  }

  @Test
  void refusesEveryChangedLeaf() {
    Exam exam = demo("02-net-mender.yaml");
    ObjectNode bundle = (ObjectNode) MAPPER.readTree(WRITER.write(exam));
    List<String> unnoticed = new ArrayList<>();
    for (JsonNode one : resources(bundle).filter(DerivedTest::isDerived).limit(4).toList()) {
      leaves(one, "resource", unnoticed, () -> READER.read(MAPPER.writeValueAsString(bundle)));
    }
    assertEquals(List.of(), unnoticed);
  }

  @Test
  void areAcceptedByTheReferenceValidator() {
    ProfileValidator validator = ProfileValidator.standard();
    for (BundleKind kind : BundleKind.values()) {
      String json = FhirWriter.of(kind).withDerived().write(demo("02-net-mender.yaml"));
      List<ValidationMessage> said =
          validator.validate(json).stream()
              .filter(one -> one.severity() != ValidationMessage.Severity.INFORMATION)
              .toList();
      assertEquals(List.of(), said, kind.toString());
    }
  }

  private static List<Fault> changed(
      java.util.function.Predicate<JsonNode> which, Consumer<JsonNode> change) {
    JsonNode bundle = MAPPER.readTree(WRITER.write(demo("02-net-mender.yaml")));
    change.accept(
        resources(bundle).filter(DerivedTest::isDerived).filter(which).findFirst().orElseThrow());
    return READER.read(MAPPER.writeValueAsString(bundle)).faults();
  }

  private static void leaves(
      JsonNode node,
      String path,
      List<String> unnoticed,
      java.util.function.Supplier<Result<Exam>> read) {
    if (node instanceof ObjectNode object) {
      for (String name : List.copyOf(object.propertyNames())) {
        JsonNode child = object.get(name);
        String below = path + "." + name;
        if (child.isContainer()) {
          leaves(child, below, unnoticed, read);
        } else if (!TRANSPORT.matcher(below).matches() && !VERSION.matcher(below).matches()) {
          if (child.isNumber()) {
            object.put(name, child.decimalValue().add(java.math.BigDecimal.ONE));
          } else {
            object.put(name, "changed");
          }
          if (read.get().isOk()) {
            unnoticed.add(below + " changed");
          }
          object.remove(name);
          if (read.get().isOk() && !OPTIONAL.matcher(below).matches()) {
            unnoticed.add(below + " removed");
          }
          object.set(name, child);
        }
      }
    } else {
      for (int i = 0; i < node.size(); i++) {
        leaves(node.get(i), path + "[" + i + "]", unnoticed, read);
      }
    }
  }

  private static List<JsonNode> derived(String json) {
    return resources(MAPPER.readTree(json)).filter(DerivedTest::isDerived).toList();
  }

  private static Stream<JsonNode> resources(JsonNode bundle) {
    return bundle.path("entry").valueStream().map(entry -> entry.path("resource"));
  }

  private static boolean isDerived(JsonNode resource) {
    JsonNode coding = resource.path("code").path("coding").path(0);
    return coding.path("code").asString("").equals(ExamCodes.DERIVED.code());
  }
}
