package org.isopter.mapper.foreign.document;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.json.Raw;

/**
 * Puts back into a converted document what names the eye and what the converters leave out: where a
 * body structure lies, and the body structure that an R5 observation is of.
 */
final class Structures {

  private static final String EXTENSION = "http://hl7.org/fhir/StructureDefinition/bodySite";

  private Structures() {}

  /** Returns the converted document with the structures of the original, in the words of R4. */
  static Raw restored(Raw original, Raw converted) {
    if (!(original instanceof Raw.Obj from) || !(converted instanceof Raw.Obj to)) {
      return converted;
    }
    Raw.Obj all = inList(from, inList(from, to, "entry"), "contained");
    Optional<Raw.Obj> resource = from.object("resource");
    if (resource.isPresent() && all.object("resource").isPresent()) {
      all = all.with("resource", restored(resource.get(), all.object("resource").get()));
    }
    return switch (Neighbours.type(from)) {
      case "BodyStructure" -> structure(from, all);
      case "Observation" -> observation(from, all);
      default -> all;
    };
  }

  private static Raw.Obj inList(Raw.Obj from, Raw.Obj to, String name) {
    List<Raw> before = from.list(name);
    List<Raw> after = to.list(name);
    if (before.isEmpty() || before.size() != after.size()) {
      return to;
    }
    List<Raw> items = new ArrayList<>();
    for (int i = 0; i < after.size(); i++) {
      items.add(restored(before.get(i), after.get(i)));
    }
    return to.with(name, new Raw.Arr(items));
  }

  /** R4B has the members of R4; R5 has them for each structure, of which R4 can say only one. */
  private static Raw.Obj structure(Raw.Obj from, Raw.Obj to) {
    Raw.Obj all = to;
    for (String name : List.of("location", "locationQualifier")) {
      Optional<Raw> value = from.get(name);
      if (value.isPresent() && all.get(name).isEmpty()) {
        all = all.with(name, value.get());
      }
    }
    List<Raw.Obj> included = from.objects("includedStructure");
    if (included.size() != 1 || all.get("location").isPresent()) {
      return all;
    }
    Optional<Raw.Obj> lies = included.get(0).object("structure");
    Optional<Raw.Obj> side = included.get(0).object("laterality");
    all = lies.isPresent() ? all.with("location", lies.get()) : all;
    return side.isPresent() ? all.with("locationQualifier", new Raw.Arr(List.of(side.get()))) : all;
  }

  private static Raw.Obj observation(Raw.Obj from, Raw.Obj to) {
    Optional<Raw.Obj> structure = from.object("bodyStructure");
    Optional<Raw.Obj> site = to.object("bodySite");
    boolean there = site.filter(s -> !s.list("extension").isEmpty()).isPresent();
    if (structure.isEmpty() || there) {
      return to;
    }
    Map<String, Raw> extension = new LinkedHashMap<>();
    extension.put("url", Raw.of(EXTENSION));
    extension.put("valueReference", structure.get());
    Raw list = new Raw.Arr(List.of(new Raw.Obj(extension)));
    return to.with("bodySite", site.orElse(Raw.Obj.EMPTY).with("extension", list));
  }
}
