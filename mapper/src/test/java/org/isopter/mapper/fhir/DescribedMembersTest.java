package org.isopter.mapper.fhir;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Result;
import org.isopter.model.wire.BaseElements;
import org.isopter.model.wire.Condition;
import org.isopter.model.wire.Element;
import org.isopter.model.wire.ExaminationElements;
import org.isopter.model.wire.FindingElements;
import org.isopter.model.wire.Fixed;
import org.isopter.model.wire.ObservationMember;
import org.isopter.profiles.artefact.view.View;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** What is written, read and shown in views is what the description of a finding has. */
class DescribedMembersTest {

  private static final JsonMapper MAPPER = new JsonMapper();
  private static final long SEED = Long.getLong("seed", 29L);
  private static final FhirWriter WRITER = FhirWriter.of(BundleKind.COLLECTION);
  private static final FhirReader READER = new FhirReader(MadeUp.CATALOGUE);

  /** How a resource is kept and shown, of which the description says nothing. */
  private static final Set<String> AROUND =
      Set.of("resourceType", "id", "meta", "text", "extension");

  @Test
  void writesTheMembersInTheOrderOfTheStandard() {
    Set<ObservationMember> seen = new TreeSet<>();
    forEachObservation(
        observation -> {
          List<ObservationMember> members = members(observation);
          assertEquals(members.stream().distinct().sorted().toList(), members);
          seen.addAll(members);
        });
    assertEquals(allowed(), seen, "seed " + SEED);
  }

  @Test
  void writesWhatTheDescriptionOfEachFindingAllowsAndNothingElse() {
    for (Finding<?> finding : MadeUp.CATALOGUE.all()) {
      Set<String> described = described(FindingElements.of(finding));
      Set<String> written = new TreeSet<>();
      samples(finding, exam -> findings(exam).forEach(one -> written.addAll(variable(one))));
      assertEquals(described, written, finding + ", seed " + SEED);
    }
  }

  @Test
  void writesWhatTheDescriptionOfThePanelAllowsAndNothingElse() {
    Set<String> written = new TreeSet<>();
    samples(
        MadeUp.CORNEAL_SENSATION,
        exam ->
            observations(exam).stream()
                .filter(one -> one.has("hasMember"))
                .forEach(panel -> written.addAll(variable(panel))));
    assertEquals(described(ExaminationElements.make()), written, "seed " + SEED);
  }

  @Test
  void readsEachMemberOrRefusesWhatLacksIt() {
    Set<ObservationMember> tried = new TreeSet<>();
    for (Finding<?> finding : MadeUp.CATALOGUE.all()) {
      Exam exam = new ExamSampler(List.of(finding), new Random(SEED)).next();
      ObjectNode bundle = (ObjectNode) MAPPER.readTree(WRITER.write(exam));
      for (ObjectNode observation : observations(bundle)) {
        for (String name : List.copyOf(observation.propertyNames())) {
          if (AROUND.contains(name)) {
            continue;
          }
          tried.add(member(name));
          assertFalse(readsSame(exam, bundle, observation, name), finding + " without " + name);
        }
      }
    }
    assertEquals(allowed(), tried, "seed " + SEED);
  }

  /** What is the same in every row, about the examiner, or in free words has no column. */
  @Test
  void showsEachMemberInTheViewOfEachFinding() {
    Set<ObservationMember> without =
        Set.of(ObservationMember.CATEGORY, ObservationMember.PERFORMER, ObservationMember.NOTE);
    for (Finding<?> finding : MadeUp.CATALOGUE.all()) {
      String columns = View.of(Catalogue.of(List.of(finding))).get(0).json();
      for (String name : described(FindingElements.of(finding))) {
        assertTrue(columns.contains(name.substring(name.indexOf(' ') + 1)), finding + " " + name);
      }
      for (Element element : BaseElements.make().children()) {
        ObservationMember member = member(element.name());
        boolean wanted = element.max() != 0 && !without.contains(member);
        boolean shown =
            member == ObservationMember.VALUE
                || columns.contains("\"" + member.path() + ".")
                || columns.contains("\"" + member.path() + "\"");
        assertTrue(shown || !wanted, finding + " " + member);
      }
    }
  }

  private static boolean readsSame(
      Exam exam, ObjectNode bundle, ObjectNode observation, String name) {
    ObjectNode whole = observation.deepCopy();
    observation.remove(name);
    boolean same =
        READER.read(bundle.toString()) instanceof Result.Ok<Exam> ok && ok.value().equals(exam);
    observation.removeAll();
    observation.setAll(whole);
    return same;
  }

  /** Returns what differs from finding to finding: type of the value, codes of the components. */
  private static Set<String> described(Element root) {
    Set<String> described = new TreeSet<>();
    for (Element element : root.children()) {
      if (element.max() == 0 || !isStated(element)) {
        continue;
      }
      switch (member(element.name())) {
        case METHOD -> described.add("method method");
        case VALUE ->
            element.conditions(Condition.OneOfTypes.class).stream()
                .flatMap(types -> types.types().stream())
                .forEach(type -> described.add("value " + type));
        case COMPONENT ->
            element.slicing().stream()
                .flatMap(how -> how.slices().stream())
                .forEach(slice -> described.addAll(component(slice)));
        default -> {}
      }
    }
    return described;
  }

  private static boolean isStated(Element element) {
    return element.isStated() || !element.children().isEmpty();
  }

  private static Set<String> component(Element slice) {
    Fixed code = slice.children().get(0).conditions(Condition.Pattern.class).get(0).fixed();
    return Set.of("component " + ((Fixed.OfConcept) code).code().code());
  }

  private static Set<String> variable(JsonNode observation) {
    Set<String> written = new TreeSet<>();
    for (String name : observation.propertyNames()) {
      if (name.startsWith("value")) {
        written.add("value " + type(name));
      }
    }
    if (observation.has("method")) {
      written.add("method method");
    }
    for (JsonNode component : observation.path("component")) {
      written.add("component " + component.at("/code/coding/0/code").asString());
    }
    return written;
  }

  private static String type(String name) {
    String type = name.substring("value".length());
    boolean complex = Set.of("Quantity", "CodeableConcept", "Ratio").contains(type);
    return complex ? type : Character.toLowerCase(type.charAt(0)) + type.substring(1);
  }

  private static Set<ObservationMember> allowed() {
    Set<ObservationMember> allowed = new TreeSet<>(ObservationMember.all());
    allowed.removeAll(
        Set.of(
            ObservationMember.MODIFIER_EXTENSION,
            ObservationMember.FOCUS,
            ObservationMember.SPECIMEN));
    return allowed;
  }

  private static List<ObservationMember> members(JsonNode observation) {
    return observation.propertyNames().stream()
        .filter(name -> !AROUND.contains(name))
        .map(DescribedMembersTest::member)
        .toList();
  }

  private static ObservationMember member(String name) {
    return ObservationMember.all().stream()
        .filter(
            member ->
                member.label().equals(name)
                    || (member.label().endsWith("[x]") && name.startsWith(member.path())))
        .findFirst()
        .orElseThrow(() -> new AssertionError(name + " is not described"));
  }

  private static void forEachObservation(Consumer<ObjectNode> action) {
    for (Finding<?> finding : MadeUp.CATALOGUE.all()) {
      Exam exam = new ExamSampler(List.of(finding), new Random(SEED)).next();
      observations(exam).forEach(action);
    }
  }

  private static void samples(Finding<?> finding, Consumer<Exam> action) {
    ExamSampler exams = new ExamSampler(List.of(finding), new Random(SEED));
    Stream.generate(exams::next).limit(60).forEach(action);
  }

  private static List<ObjectNode> findings(Exam exam) {
    return observations(exam).stream().filter(one -> one.has("bodySite")).toList();
  }

  private static List<ObjectNode> observations(Exam exam) {
    return observations(MAPPER.readTree(WRITER.write(exam)));
  }

  private static List<ObjectNode> observations(JsonNode bundle) {
    List<ObjectNode> observations = new ArrayList<>();
    for (JsonNode entry : bundle.path("entry")) {
      if (entry.at("/resource/resourceType").asString().equals("Observation")) {
        observations.add((ObjectNode) entry.path("resource"));
      }
    }
    return observations;
  }
}
