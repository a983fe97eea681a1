package org.isopter.mapper.fhir;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.value.Result;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** No leaf of what is written may change without the reader refusing it or reading it. */
class EveryLeafTest {

  private static final JsonMapper MAPPER = new JsonMapper();
  private static final FhirReader READER = new FhirReader(Catalogue.standard());
  private static final long SEED = Long.getLong("seed", 11L);

  /** What says how a resource is kept, sent and shown; it may differ and means nothing else. */
  private static final Pattern TRANSPORT =
      Pattern.compile(
          ".*\\.resource\\.(id|(section\\[\\d+]\\.)?text\\.div)|Bundle\\.timestamp|.*\\.fullUrl"
              // Which version of ours wrote it.
              + "|.*\\.(who|author\\[0])\\.display");

  /** What a conforming sender may leave out without changing what is said. */
  private static final Pattern OPTIONAL =
      Pattern.compile(
          ".*\\.display|.*\\.meta\\.profile\\[0]|Bundle\\.identifier\\..*"
              // Our own system stands for a record that states none.
              + "|.*resource\\.(what\\.|entity\\[\\d+]\\.what\\.)?identifier(\\[0])?\\.system");

  @Test
  void refusesOrReadsEveryChangedLeaf() {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new Random(SEED));
    Set<String> unnoticed = new TreeSet<>();
    for (int i = 0; i < 12; i++) {
      Exam exam = exams.next();
      String json = FhirWriter.of(BundleKind.DOCUMENT).write(exam);
      JsonNode bundle = MAPPER.readTree(json);
      for (Leaf leaf : leaves(bundle, "Bundle")) {
        unnoticed.addAll(unnoticed(exam, bundle, leaf));
      }
    }
    assertEquals(Set.of(), unnoticed, "seed " + SEED);
  }

  @Test
  void refusesAnElementThatNobodyReads() {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new Random(SEED));
    for (int i = 0; i < 20; i++) {
      String json = FhirWriter.of(BundleKind.COLLECTION).write(exams.next());
      JsonNode root = MAPPER.readTree(json);
      for (ObjectNode object : objects(root)) {
        object.put("surprise", 1);
        Result<Exam> read = READER.read(MAPPER.writeValueAsBytes(root));
        object.remove("surprise");
        boolean named = read.faults().stream().anyMatch(fault -> fault.path().contains("surprise"));
        assertTrue(named, object + " -> " + read);
      }
    }
  }

  private static List<String> unnoticed(Exam exam, JsonNode bundle, Leaf leaf) {
    List<String> unnoticed = new ArrayList<>();
    for (String change : List.of("other", "gone")) {
      JsonNode changed = leaf.change(bundle.deepCopy(), change);
      Result<Exam> read = READER.read(MAPPER.writeValueAsBytes(changed));
      boolean same = read instanceof Result.Ok<Exam> ok && ok.value().equals(exam);
      if (same && !mayDiffer(leaf, change)) {
        unnoticed.add(leaf.path().replaceAll("\\[\\d+]", "[]") + " " + change);
      }
    }
    return unnoticed;
  }

  private static boolean mayDiffer(Leaf leaf, String change) {
    return TRANSPORT.matcher(leaf.path()).matches()
        || (change.equals("gone") && OPTIONAL.matcher(leaf.path()).matches());
  }

  private record Leaf(String path, List<Object> steps) {
    JsonNode change(JsonNode root, String change) {
      JsonNode holder = root;
      for (Object step : steps.subList(0, steps.size() - 1)) {
        holder = step instanceof Integer at ? holder.get(at) : holder.get((String) step);
      }
      Object last = steps.get(steps.size() - 1);
      if (holder instanceof ArrayNode array) {
        replace(array, (Integer) last, change);
      } else {
        replace((ObjectNode) holder, (String) last, change);
      }
      return root;
    }

    private static void replace(ArrayNode array, int at, String change) {
      if (change.equals("gone")) {
        array.remove(at);
      } else {
        array.set(at, other(array, array.get(at)));
      }
    }

    private static void replace(ObjectNode object, String name, String change) {
      if (change.equals("gone")) {
        object.remove(name);
      } else {
        object.set(name, other(object, object.get(name)));
      }
    }

    private static JsonNode other(
        tools.jackson.databind.node.ContainerNode<?> factory, JsonNode v) {
      if (v.isNumber()) {
        return factory.numberNode(v.decimalValue().add(java.math.BigDecimal.valueOf(100_000)));
      }
      return v.isBoolean()
          ? factory.booleanNode(!v.booleanValue())
          : factory.stringNode("X" + v.asString());
    }
  }

  private static List<Leaf> leaves(JsonNode node, String path) {
    List<Leaf> leaves = new ArrayList<>();
    collect(node, path, new ArrayList<>(), leaves);
    return leaves;
  }

  private static void collect(JsonNode node, String path, List<Object> steps, List<Leaf> leaves) {
    if (node.isObject()) {
      for (Map.Entry<String, JsonNode> property : node.properties()) {
        collect(
            property.getValue(),
            path + "." + property.getKey(),
            plus(steps, property.getKey()),
            leaves);
      }
    } else if (node.isArray()) {
      for (int i = 0; i < node.size(); i++) {
        collect(node.get(i), path + "[" + i + "]", plus(steps, i), leaves);
      }
    } else {
      leaves.add(new Leaf(path, steps));
    }
  }

  private static List<Object> plus(List<Object> steps, Object step) {
    List<Object> more = new ArrayList<>(steps);
    more.add(step);
    return more;
  }

  private static List<ObjectNode> objects(JsonNode node) {
    List<ObjectNode> objects = new ArrayList<>();
    if (node instanceof ObjectNode object) {
      objects.add(object);
    }
    node.forEach(child -> objects.addAll(objects(child)));
    return objects;
  }
}
