package org.isopter.mapper.foreign.document;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;

/**
 * The elements that an Observation has, by FHIR R4 and the one of R5 that is read here. What stands
 * elsewhere, or in another shape, is seen by no rule, and may be a comment, another eye or a no.
 */
public final class Elements {

  private static final String WHOLE = "Observation";

  /** Not looked into: whole resources, and what is not taken anyhow. */
  private static final String ANY = "Any";

  /** A line for each type; {@code *} marks a list, and what has no type is a primitive. */
  private static final String TABLE =
      """
      Observation resourceType implicitRules language meta:Meta text:Narrative contained*:Any \
        identifier*:Identifier basedOn*:Reference partOf*:Reference status category*:Concept \
        code:Concept subject:Reference focus*:Reference encounter:Reference effectiveDateTime \
        effectivePeriod:Period effectiveTiming:Any effectiveInstant issued performer*:Reference \
        valueQuantity:Quantity valueCodeableConcept:Concept valueString valueBoolean valueInteger \
        valueRange:Range valueRatio:Ratio valueSampledData:Any valueTime valueDateTime \
        valuePeriod:Period dataAbsentReason:Concept interpretation*:Concept note*:Annotation \
        bodySite:Concept bodyStructure:Reference method:Concept specimen:Reference \
        device:Reference referenceRange*:ReferenceRange hasMember*:Reference \
        derivedFrom*:Reference component*:Component
      Component code:Concept valueQuantity:Quantity valueCodeableConcept:Concept valueString \
        valueBoolean valueInteger valueRange:Range valueRatio:Ratio valueSampledData:Any \
        valueTime valueDateTime valuePeriod:Period dataAbsentReason:Concept \
        interpretation*:Concept referenceRange*:ReferenceRange
      ReferenceRange low:Quantity high:Quantity type:Concept appliesTo*:Concept age:Range text
      Concept coding*:Coding text
      Coding system version code display userSelected
      Reference reference type identifier:Identifier display
      Identifier use type:Concept system value period:Period assigner:Reference
      Quantity value comparator unit system code
      Range low:Quantity high:Quantity
      Ratio numerator:Quantity denominator:Quantity
      Period start end
      Annotation authorReference:Reference authorString time text
      Narrative status div
      Meta versionId lastUpdated source profile* security*:Coding tag*:Coding
      """;

  private static final Map<String, Map<String, Allowed>> TYPES = read();

  private Elements() {}

  /** Returns the place of the first element that an Observation does not have, or not so. */
  public static Optional<String> firstOther(Raw observation) {
    return other(observation, WHOLE);
  }

  /** Places are put together on the way back, for hardly an observation has such an element. */
  private static Optional<String> other(Raw value, String type) {
    if (type.equals(ANY)) {
      return Optional.empty();
    }
    if (!(value instanceof Raw.Obj object)) {
      return Optional.of("");
    }
    for (Map.Entry<String, Raw> member : object.members().entrySet()) {
      Optional<String> other = member(member.getKey(), member.getValue(), type);
      if (other.isPresent()) {
        return other.map(rest -> PlacedLeaf.step("", member.getKey()) + rest);
      }
    }
    return Optional.empty();
  }

  private static Optional<String> member(String name, Raw value, String type) {
    Map<String, Allowed> elements = TYPES.getOrDefault(type, Map.of());
    boolean nothing = isNothing(value);
    if (nothing || (name.startsWith("_") && elements.containsKey(name.substring(1)))) {
      return Optional.empty();
    }
    if (name.equals("extension") || name.equals("modifierExtension")) {
      return value instanceof Raw.Arr ? Optional.empty() : Optional.of("");
    }
    Allowed element = name.equals("id") ? Allowed.PRIMITIVE : elements.get(name);
    return element == null ? Optional.of("") : element.other(value);
  }

  private static boolean isNothing(Raw value) {
    return value instanceof Raw.Leaf leaf && leaf.kind() == Raw.Kind.NULL;
  }

  private static Map<String, Map<String, Allowed>> read() {
    Map<String, Map<String, Allowed>> types = new HashMap<>();
    for (String line : TABLE.strip().split("\n", -1)) {
      List<String> words = List.of(line.strip().split("\\s+", -1));
      Map<String, Allowed> elements = new HashMap<>();
      words.subList(1, words.size()).forEach(word -> elements.put(name(word), Allowed.of(word)));
      types.put(words.get(0), elements);
    }
    return types;
  }

  private static String name(String word) {
    return word.replaceAll("[*:].*", "");
  }

  /** An element: whether it is a list, and its type; empty for a primitive. */
  private record Allowed(boolean list, String type) {

    static final Allowed PRIMITIVE = new Allowed(false, "");

    static Allowed of(String word) {
      int colon = word.indexOf(':');
      return new Allowed(word.indexOf('*') > 0, colon < 0 ? "" : word.substring(colon + 1));
    }

    Optional<String> other(Raw value) {
      if (!list) {
        return one(value);
      }
      if (!(value instanceof Raw.Arr items)) {
        return Optional.of("");
      }
      for (int i = 0; i < items.items().size(); i++) {
        Optional<String> other = one(items.items().get(i));
        if (other.isPresent()) {
          String at = "/" + i;
          return other.map(rest -> at + rest);
        }
      }
      return Optional.empty();
    }

    private Optional<String> one(Raw value) {
      if (!type.isEmpty()) {
        return isNothing(value) ? Optional.empty() : Elements.other(value, type);
      }
      return value instanceof Raw.Leaf ? Optional.empty() : Optional.of("");
    }
  }
}
