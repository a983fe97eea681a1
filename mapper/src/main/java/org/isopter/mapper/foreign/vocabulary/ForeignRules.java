package org.isopter.mapper.foreign.vocabulary;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;

/** The rules by which {@code ForeignReader} takes what others write, as a list. */
public final class ForeignRules {

  private static final String FILE = "rules.json";

  private ForeignRules() {}

  /** Returns every rule, in the order of the documentation. */
  public static List<ForeignRule> all() {
    return Holder.RULES;
  }

  /** Returns the observation in JSON that the examples start from. */
  public static String plain() {
    return RawJson.write(Habits.load(FILE).object("plain").orElseThrow());
  }

  /** Returns the rule of that id. */
  public static Optional<ForeignRule> byId(String id) {
    return all().stream().filter(rule -> rule.id().equals(id)).findFirst();
  }

  /** Returns the observation, or the bundle, that differs so from the plain observation. */
  public static String whole(Raw difference) {
    return whole(Habits.load(FILE).object("plain").orElseThrow(), difference);
  }

  private static List<ForeignRule> load() {
    Raw file = Habits.load(FILE);
    Raw.Obj plain = file.object("plain").orElseThrow();
    List<ForeignRule> rules = new ArrayList<>();
    for (Raw.Obj row : file.objects("rules")) {
      rules.add(
          new ForeignRule(
              text(row, "id"),
              text(row, "kind"),
              text(row, "reason"),
              example(plain, row.get("takes").orElseThrow()),
              example(plain, row.get("refuses").orElseThrow())));
    }
    return List.copyOf(rules);
  }

  /** An example states only how it differs from the plain observation; a list is a bundle. */
  private static ForeignRule.Example example(Raw plain, Raw difference) {
    return new ForeignRule.Example(RawJson.write(difference), whole(plain, difference));
  }

  private static String whole(Raw plain, Raw difference) {
    if (!(difference instanceof Raw.Arr list)) {
      return RawJson.write(merge(plain, difference));
    }
    List<Raw> entries = new ArrayList<>();
    for (Raw item : list.items()) {
      boolean whole = item.get("resourceType").isPresent();
      entries.add(new Raw.Obj(Map.of("resource", whole ? item : merge(plain, item))));
    }
    Map<String, Raw> bundle = new LinkedHashMap<>();
    bundle.put("resourceType", Raw.of("Bundle"));
    bundle.put("type", Raw.of("collection"));
    bundle.put("entry", Raw.of(entries));
    return RawJson.write(new Raw.Obj(bundle));
  }

  /** Lays a difference over a value, as RFC 7386 says. */
  private static Raw merge(Raw value, Raw difference) {
    if (!(difference instanceof Raw.Obj changes)) {
      return difference;
    }
    Map<String, Raw> merged =
        new LinkedHashMap<>(value instanceof Raw.Obj object ? object.members() : Map.of());
    changes
        .members()
        .forEach(
            (name, change) -> {
              if (change instanceof Raw.Leaf leaf && leaf.kind() == Raw.Kind.NULL) {
                merged.remove(name);
              } else {
                merged.put(name, merge(merged.getOrDefault(name, Raw.Obj.EMPTY), change));
              }
            });
    return new Raw.Obj(merged);
  }

  private static String text(Raw row, String name) {
    return row.string(name).orElseThrow();
  }

  /** Holds the rules; they are read when they are first asked for. */
  private static final class Holder {
    static final List<ForeignRule> RULES = load();
  }
}
