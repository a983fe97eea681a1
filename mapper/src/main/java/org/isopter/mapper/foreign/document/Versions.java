package org.isopter.mapper.foreign.document;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.json.Raw;
import org.isopter.model.value.Fault;

/**
 * Finds the resources that say again, or say anew, what another of the same document says.
 *
 * <p>Two are the same resource where they share an identifier with its system, or type and id.
 * Where their content is equal apart from {@code meta}, the first holds. Otherwise the one with the
 * higher version holds, else the one that was changed or issued later; where neither says so, none
 * is taken.
 */
public final class Versions {

  private final List<Document.Part> parts;
  private final Map<Integer, Reason> superseded = new HashMap<>();
  private final Map<Integer, Integer> instead = new HashMap<>();

  private Versions(List<Document.Part> parts) {
    this.parts = parts;
  }

  /**
   * Compares resources.
   *
   * @param namesOf the names of a resource, of which two versions share one; a resource without a
   *     name is no version of another
   */
  public static Versions of(
      List<Document.Part> parts, Function<Document.Part, List<String>> namesOf) {
    Versions versions = new Versions(parts);
    Map<String, List<Integer>> same = new LinkedHashMap<>();
    for (int i = 0; i < parts.size(); i++) {
      Optional<String> deleted = parts.get(i).deletion();
      if (deleted.isPresent()) {
        Fault fault = Fault.of("", "a deletion at " + deleted.get(), "a version that holds");
        versions.superseded.put(i, new Reason(Why.RETRACTED, fault));
      } else {
        for (String name : namesOf.apply(parts.get(i))) {
          same.computeIfAbsent(name, any -> new ArrayList<>()).add(i);
        }
      }
    }
    same.values().forEach(versions::compare);
    return versions;
  }

  /** Returns the reason for each resource that does not hold, by its number. */
  public Map<Integer, Reason> superseded() {
    return superseded;
  }

  /** Returns the number of the resource that holds instead of one; its own where it does. */
  public int holding(int number) {
    int holds = number;
    while (instead.containsKey(holds)) {
      holds = instead.getOrDefault(holds, holds);
    }
    return holds;
  }

  /** Returns the names that any resource has: its identifiers with a system, and its id. */
  public static List<String> names(Raw.Obj resource) {
    List<String> names = new ArrayList<>();
    String type = Neighbours.type(resource);
    for (Raw.Obj identifier : resource.objects("identifier")) {
      Optional<String> system = identifier.string("system");
      Optional<String> value = identifier.string("value");
      if (system.isPresent() && value.isPresent()) {
        names.add(type + " " + system.get() + "|" + value.get());
      }
    }
    resource.string("id").ifPresent(id -> names.add(type + "/" + id));
    return names;
  }

  private void compare(List<Integer> numbers) {
    int holds = numbers.get(0);
    for (int other : numbers.subList(1, numbers.size())) {
      if (superseded.containsKey(holds) || superseded.containsKey(other) || holds == other) {
        continue;
      }
      Raw.Obj one = parts.get(holds).resource();
      Raw.Obj two = parts.get(other).resource();
      int later = later(one, two);
      if (one.without("meta").equals(two.without("meta"))) {
        put(other, Why.DUPLICATE, holds);
      } else if (later > 0) {
        put(holds, Why.REPLACED, other);
        holds = other;
      } else if (later < 0) {
        put(other, Why.REPLACED, holds);
      } else {
        put(holds, Why.VERSIONS_UNDECIDED, other);
        put(other, Why.VERSIONS_UNDECIDED, holds);
      }
    }
  }

  private void put(int number, Why why, int other) {
    if (why != Why.VERSIONS_UNDECIDED) {
      instead.put(number, other);
    }
    String name = parts.get(other).at();
    superseded.put(number, new Reason(why, Fault.of("", "another at " + name, "one version")));
  }

  /** Returns more than 0 where the second is the later one, less than 0 where the first is. */
  private static int later(Raw one, Raw two) {
    int version = compare(meta(one, "versionId"), meta(two, "versionId"), true);
    if (version != 0) {
      return version;
    }
    int changed = compare(meta(one, "lastUpdated"), meta(two, "lastUpdated"), false);
    return changed != 0
        ? changed
        : compare(one.string("issued").orElse(""), two.string("issued").orElse(""), false);
  }

  private static String meta(Raw resource, String name) {
    return resource.object("meta").flatMap(meta -> meta.string(name)).orElse("");
  }

  private static int compare(String one, String two, boolean number) {
    if (one.isEmpty() || two.isEmpty()) {
      return 0;
    }
    if (number) {
      boolean both = one.matches("\\d{1,18}") && two.matches("\\d{1,18}");
      return both ? Long.compare(Long.parseLong(two), Long.parseLong(one)) : 0;
    }
    try {
      return java.time.OffsetDateTime.parse(two).compareTo(java.time.OffsetDateTime.parse(one));
    } catch (java.time.format.DateTimeParseException unreadable) {
      return 0;
    }
  }
}
