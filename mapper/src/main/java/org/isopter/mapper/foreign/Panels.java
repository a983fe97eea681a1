package org.isopter.mapper.foreign;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Finds the observations that a report or another observation holds together. */
final class Panels {

  private Panels() {}

  /** Returns the name of the panel of each resource that is in one, by the resource's name. */
  static Map<String, String> of(List<Document.Part> parts) {
    Map<String, String> names = new HashMap<>();
    for (Document.Part part : parts) {
      String own = name(part);
      part.fullUrl().ifPresent(url -> names.put(url, own));
      names.put(own, own);
    }
    Map<String, String> panels = new HashMap<>();
    for (Document.Part part : parts) {
      for (String list : List.of("result", "hasMember")) {
        for (Raw.Obj member : part.resource().objects(list)) {
          String reference = member.string("reference").orElse("");
          String target = names.getOrDefault(reference, reference);
          panels.putIfAbsent(target, name(part));
          panels.putIfAbsent(name(part), name(part));
        }
      }
    }
    return panels;
  }

  /** Returns {@code Type/id}, or the address where there is no id. */
  static String name(Document.Part part) {
    String type = Neighbours.type(part.resource());
    return part.resource().string("id").map(id -> type + "/" + id).orElseGet(part::address);
  }

  /** Returns every reference in a resource. */
  static Set<String> references(Raw resource) {
    Set<String> references = new LinkedHashSet<>();
    for (Placed leaf : resource.leaves()) {
      if (leaf.at().endsWith("/reference")) {
        leaf.value().string().ifPresent(references::add);
      }
    }
    return references;
  }
}
