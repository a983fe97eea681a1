package org.isopter.mapper.foreign.document;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.isopter.mapper.json.Raw;

/** Finds the observations that a report or another observation holds together. */
public final class Panels {

  private static final List<String> MEMBERS = List.of("result", "hasMember");

  private Panels() {}

  /** Returns the name of the panel of each resource that is in one, by the resource's name. */
  public static Map<String, String> of(List<Document.Part> parts) {
    List<Document.Part> holders = parts.stream().filter(Panels::isHolder).toList();
    return holders.isEmpty() ? Map.of() : of(holders, names(parts));
  }

  private static boolean isHolder(Document.Part part) {
    return MEMBERS.stream().anyMatch(list -> part.resource().get(list).isPresent());
  }

  private static Map<String, String> names(List<Document.Part> parts) {
    Map<String, String> names = new HashMap<>();
    for (Document.Part part : parts) {
      String own = name(part);
      part.fullUrl().ifPresent(url -> names.put(url, own));
      names.put(own, own);
    }
    return names;
  }

  private static Map<String, String> of(List<Document.Part> holders, Map<String, String> names) {
    Map<String, String> panels = new HashMap<>();
    for (Document.Part part : holders) {
      for (String list : MEMBERS) {
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
  public static String name(Document.Part part) {
    String type = Neighbours.type(part.resource());
    return part.resource().string("id").map(id -> type + "/" + id).orElseGet(part::address);
  }

  /** Returns every reference in a resource. */
  public static Set<String> references(Raw resource) {
    Set<String> references = new LinkedHashSet<>();
    collect(resource, references);
    return references;
  }

  private static void collect(Raw value, Set<String> references) {
    if (value instanceof Raw.Obj object) {
      object.string("reference").ifPresent(references::add);
      object.members().values().forEach(child -> collect(child, references));
    } else if (value instanceof Raw.Arr list) {
      list.items().forEach(item -> collect(item, references));
    }
  }
}
