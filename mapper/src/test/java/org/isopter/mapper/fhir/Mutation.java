package org.isopter.mapper.fhir;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * One change of a kind that no reader may let pass, and no validator without a word: an error, or a
 * warning where the profile leaves room for codes of others.
 */
public enum Mutation {
  UNIT {
    @Override
    void find(JsonNode observation, List<Consumer<JsonNode>> changes) {
      each(observation, "valueQuantity", q -> ((ObjectNode) q).put("code", "kPa"), changes);
      each(observation, "numerator", q -> ((ObjectNode) q).put("code", "kPa"), changes);
    }
  },
  CODE {
    @Override
    void find(JsonNode observation, List<Consumer<JsonNode>> changes) {
      if (observation.has("valueCodeableConcept")) {
        changes.add(o -> recode(o.path("valueCodeableConcept"), "74964007"));
      }
      changes.add(o -> recode(o.path("code"), "55284-4"));
    }
  },
  CODE_OF_PART {
    @Override
    void find(JsonNode observation, List<Consumer<JsonNode>> changes) {
      for (int i = 0; i < observation.path("component").size(); i++) {
        int at = i;
        if (observation.path("component").get(i).has("valueCodeableConcept")) {
          changes.add(
              o -> recode(o.path("component").get(at).path("valueCodeableConcept"), "74964007"));
        }
      }
    }
  },
  SIDE {
    @Override
    void find(JsonNode observation, List<Consumer<JsonNode>> changes) {
      changes.add(
          o -> ((ObjectNode) o.path("bodySite").path("coding").path(0)).put("code", "7771000"));
    }
  },
  RANGE {
    @Override
    void find(JsonNode observation, List<Consumer<JsonNode>> changes) {
      each(
          observation,
          "valueQuantity",
          q -> ((ObjectNode) q).put("value", new BigDecimal("99999")),
          changes);
      if (observation.has("valueInteger")) {
        changes.add(o -> ((ObjectNode) o).put("valueInteger", 99_999));
      }
    }
  };

  private static final JsonMapper MAPPER = new JsonMapper();

  abstract void find(JsonNode observation, List<Consumer<JsonNode>> changes);

  /** Says whether a profile has to refuse it: it may leave room for the codes of others. */
  boolean isRefused() {
    return this != CODE_OF_PART;
  }

  private static void recode(JsonNode concept, String code) {
    concept.path("coding").forEach(coding -> ((ObjectNode) coding).put("code", code));
  }

  /** Returns the bundle with each change of this kind made alone. */
  List<String> of(String bundle) {
    List<String> changed = new ArrayList<>();
    JsonNode whole = MAPPER.readTree(bundle);
    JsonNode entries = whole.path("entry");
    for (int i = 0; i < entries.size(); i++) {
      JsonNode observation = entries.get(i).path("resource");
      List<Consumer<JsonNode>> changes = new ArrayList<>();
      if (observation.has("bodySite")) {
        find(observation, changes);
      }
      for (Consumer<JsonNode> change : changes) {
        JsonNode copy = whole.deepCopy();
        change.accept(copy.path("entry").path(i).path("resource"));
        changed.add(MAPPER.writeValueAsString(copy));
      }
    }
    return changed;
  }

  /** Adds a change for every element of that name: of the observation and of its components. */
  private static void each(
      JsonNode observation,
      String name,
      Consumer<JsonNode> change,
      List<Consumer<JsonNode>> changes) {
    int count = observation.findValues(name).size();
    for (int i = 0; i < count; i++) {
      int at = i;
      changes.add(o -> change.accept(o.findValues(name).get(at)));
    }
  }
}
