package org.isopter.mapper.foreign.document;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.value.Canonical;

/**
 * Writes what is left over into a resource of ours, and takes it out again.
 *
 * <p>What finds its old place free stands there, for every reader to see. What does not, since our
 * own value stands there, is said in an extension. The extension lists all of it, so that it can be
 * taken out again without loss.
 */
public final class LeftOver {

  /** Of these a resource may have only one, and ours has its own. */
  private static final List<String> SINGLE =
      List.of("value", "_value", "effective", "_effective", "dataAbsentReason", "extension");

  private LeftOver() {}

  /** Returns the resource with what is left over. */
  public static Raw.Obj into(Raw.Obj ours, List<PlacedLeaf> leaves) {
    if (leaves.isEmpty()) {
      return ours;
    }
    Raw.Obj resource = ours;
    List<Raw> list = new ArrayList<>();
    for (PlacedLeaf leaf : leaves) {
      List<String> steps = PlacedLeaf.steps(leaf.at());
      Optional<Raw.Obj> element =
          steps.isEmpty() || isSingle(steps.get(0))
              ? Optional.empty()
              : place(resource, steps, leaf.value());
      list.add(entry(leaf, element.isPresent()));
      resource = element.orElse(resource);
    }
    return withExtension(resource, list);
  }

  /**
   * What was found in a resource of ours.
   *
   * @param ours the resource without it
   * @param leaves what was left over
   */
  public record Found(Raw.Obj ours, List<PlacedLeaf> leaves) {}

  /** Takes what is left over out of a resource. */
  public static Found outOf(Raw.Obj resource) {
    List<Raw.Obj> others = new ArrayList<>();
    List<PlacedLeaf> leaves = new ArrayList<>();
    Raw.Obj ours = resource;
    for (Raw.Obj extension : resource.objects("extension")) {
      if (!extension.string("url").equals(Optional.of(Canonical.LEFT_OVER))) {
        others.add(extension);
        continue;
      }
      for (Raw.Obj entry : extension.objects("extension")) {
        Optional<PlacedLeaf> leaf = read(entry, ours);
        leaf.ifPresent(leaves::add);
        boolean inPlace = leaf.isPresent() && text(entry, "json").isEmpty();
        ours = inPlace ? cut(ours, PlacedLeaf.steps(leaf.get().at())) : ours;
      }
    }
    if (leaves.isEmpty()) {
      return new Found(resource, leaves);
    }
    Raw.Obj bare = ours.without("extension");
    return new Found(others.isEmpty() ? bare : bare.with("extension", Raw.of(others)), leaves);
  }

  /** Returns leaves as extensions, for a place that has no room for them otherwise. */
  public static Raw.Obj extension(List<PlacedLeaf> leaves) {
    return extensionOf(leaves.stream().<Raw>map(leaf -> entry(leaf, false)).toList());
  }

  private static boolean isSingle(String name) {
    return SINGLE.stream().anyMatch(name::startsWith);
  }

  private static Optional<Raw.Obj> place(Raw.Obj holder, List<String> steps, Raw value) {
    String name = steps.get(0);
    Optional<Raw> there = holder.get(name);
    if (steps.size() == 1) {
      return there.isPresent() ? Optional.empty() : Optional.of(holder.with(name, value));
    }
    if (there.isPresent() && there.get() instanceof Raw.Obj inner) {
      return place(inner, steps.subList(1, steps.size()), value)
          .map(changed -> holder.with(name, changed));
    }
    return Optional.empty();
  }

  private static Raw.Obj cut(Raw.Obj holder, List<String> steps) {
    String name = steps.get(0);
    if (steps.size() == 1) {
      return holder.without(name);
    }
    return holder
        .object(name)
        .map(inner -> holder.with(name, cut(inner, steps.subList(1, steps.size()))))
        .orElse(holder);
  }

  private static Optional<Raw> at(Raw holder, List<String> steps) {
    Optional<Raw> value = Optional.of(holder);
    for (String step : steps) {
      value = value.flatMap(inner -> inner.get(step));
    }
    return value;
  }

  private static Raw.Obj entry(PlacedLeaf leaf, boolean inPlace) {
    List<Raw> parts = new ArrayList<>();
    parts.add(part("at", leaf.at()));
    if (!inPlace) {
      parts.add(part("json", RawJson.write(leaf.value())));
    }
    Map<String, Raw> entry = new LinkedHashMap<>();
    entry.put("extension", Raw.of(parts));
    entry.put("url", Raw.of("leaf"));
    return new Raw.Obj(entry);
  }

  private static Raw part(String url, String text) {
    Map<String, Raw> part = new LinkedHashMap<>();
    part.put("url", Raw.of(url));
    // FHIR strings may not be empty: a slash stands for the whole document.
    part.put("valueString", Raw.of(text.isEmpty() ? "/" : text));
    return new Raw.Obj(part);
  }

  private static Optional<PlacedLeaf> read(Raw.Obj entry, Raw.Obj resource) {
    String at = text(entry, "at").orElse("");
    Optional<String> json = text(entry, "json");
    Optional<Raw> value =
        json.isPresent()
            ? json.flatMap(text -> RawJson.OWN.read(text).map(Optional::of).orThrow())
            : at(resource, PlacedLeaf.steps(at));
    return value.map(found -> new PlacedLeaf(at.equals("/") ? "" : at, found));
  }

  static List<PlacedLeaf> read(Raw.Obj extension) {
    return extension.objects("extension").stream()
        .map(entry -> read(entry, Raw.Obj.EMPTY))
        .flatMap(Optional::stream)
        .toList();
  }

  private static Optional<String> text(Raw.Obj entry, String url) {
    return entry.objects("extension").stream()
        .filter(part -> part.string("url").equals(Optional.of(url)))
        .findFirst()
        .flatMap(part -> part.string("valueString"));
  }

  private static Raw.Obj withExtension(Raw.Obj resource, List<Raw> entries) {
    List<Raw> extensions = new ArrayList<>(resource.list("extension"));
    extensions.add(extensionOf(entries));
    return resource.with("extension", Raw.of(extensions));
  }

  private static Raw.Obj extensionOf(List<Raw> entries) {
    Map<String, Raw> extension = new LinkedHashMap<>();
    extension.put("extension", Raw.of(entries));
    extension.put("url", Raw.of(Canonical.LEFT_OVER));
    return new Raw.Obj(extension);
  }
}
