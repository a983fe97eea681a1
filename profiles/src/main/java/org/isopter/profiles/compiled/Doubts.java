package org.isopter.profiles.compiled;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Finds what the reference validator may have something to say of although no profile of ours does:
 * codes and displays that we do not use, references, and the standard's conditions.
 */
final class Doubts {

  private static final Name CODE = Name.of("code");

  /** The codes that are written where the standard has a list of its own. */
  private static final Map<String, Map<String, Set<String>>> CODES =
      Map.of(
          "Bundle", Map.of("type", Set.of("collection")),
          "Narrative", Map.of("status", Set.of("generated")),
          "DiagnosticReport", Map.of("status", Set.of("preliminary", "final", "amended")),
          "Provenance.entity", Map.of("role", Set.of("source")));

  /** The types of what a reference under a name may lead to. */
  private static final Map<String, Set<String>> TARGETS =
      Map.of(
          "subject", Set.of("Patient"),
          "performer", Set.of("Practitioner", "Organization"),
          "device", Set.of("Device"),
          "who", Set.of("Device", "Practitioner", "Organization"),
          "hasMember", Set.of("Observation"),
          "result", Set.of("Observation"),
          "target", Set.of("DiagnosticReport", "Observation"),
          "what", Set.of());

  private final Terms terms;
  private final Map<String, String> types = new HashMap<>();

  Doubts(Terms terms, Item root) {
    this.terms = terms;
    for (Item entry : root.members("entry")) {
      entry.members("resource").forEach(each -> types.put(entry.text("fullUrl"), each.type()));
    }
  }

  /** Reports what is doubtful in an item and below it. */
  void find(Item item, Judgement report) {
    switch (item.type()) {
      case "Coding" -> require(terms.isKnown(item), item, "a code or a display", report);
      case "Identifier" -> require(isAbsolute(item.text("system")), item, "a system", report);
      case "Reference" -> require(isReference(item), item, "a reference", report);
      case "Observation" -> require(isOneOutcome(item), item, "a value beside a reason", report);
      case "Observation.component" ->
          require(hasOneCode(item), item, "a component of several codes", report);
      case "Bundle" -> bundle(item, report);
      default -> {}
    }
    Map<String, Set<String>> codes = CODES.getOrDefault(item.type(), Map.of());
    List<Item> members = item.members();
    for (int i = 0; i < members.size(); i++) {
      Item each = members.get(i);
      if (each.table().isComplex()) {
        find(each, report);
      } else if (!codes.isEmpty()) {
        code(each, codes.get(each.name()), report);
      }
    }
  }

  private static void code(Item item, @Nullable Set<String> codes, Judgement report) {
    require(codes == null || codes.contains(item.text()), item, "a code", report);
  }

  private static void bundle(Item bundle, Judgement report) {
    List<String> urls =
        bundle.members("entry").stream().map(entry -> entry.text("fullUrl")).toList();
    boolean fits = urls.stream().distinct().count() == urls.size();
    require(
        fits && urls.stream().allMatch(url -> url.startsWith("urn:uuid:")),
        bundle,
        "entries without an address each",
        report);
  }

  /** The standard has rules for some systems of its own, and for addresses of examples. */
  private static boolean isAbsolute(String system) {
    return system.isEmpty()
        || (system.indexOf(':') > 0 && !system.contains("hl7.org") && !system.contains("example."));
  }

  /** Condition obs-6 of the standard. */
  private static boolean isOneOutcome(Item observation) {
    return observation.members("value[x]").isEmpty()
        || observation.members("dataAbsentReason").isEmpty();
  }

  /** Then condition obs-7 of the standard follows from the profile. */
  private static boolean hasOneCode(Item component) {
    return !component.any(CODE, code -> code.members("coding").size() != 1);
  }

  private boolean isReference(Item item) {
    Set<String> allowed = TARGETS.getOrDefault(item.name(), Set.of());
    List<Item> reference = item.members("reference");
    List<Item> type = item.members("type");
    if (!reference.isEmpty()) {
      return type.isEmpty() && allowed.contains(types.getOrDefault(reference.get(0).text(), ""));
    }
    boolean named = !item.members("identifier").isEmpty() || !item.members("display").isEmpty();
    return named && (type.isEmpty() || allowed.contains(type.get(0).text()));
  }

  private static void require(boolean fits, Item item, String otherwise, Judgement report) {
    if (!fits) {
      report.doubt(item, otherwise);
    }
  }
}
