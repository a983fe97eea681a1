package org.isopter.mapper.foreign.returned;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.json.Limits;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;

/**
 * What servers and exports make of resources, chosen at random: members in any order, ids,
 * versions, tags, more identifiers and codings, and a bundle of any kind around them with what else
 * it holds. The shapes are those of FHIR R4, "Bundle" and "RESTful API", and of the bulk data
 * export.
 */
final class Wrapping {

  private static final RawJson JSON = new RawJson(Limits.USUAL);
  private static final String SERVER = "https://server.example/fhir/";

  private static final List<String> KINDS =
      List.of("searchset", "history", "collection", "batch", "transaction", "document");

  private static final List<String> GUESTS =
      List.of(
          """
          {"resourceType":"Patient","id":"7","active":true}""",
          """
          {"resourceType":"Encounter","id":"e","status":"finished","class":{"code":"AMB"}}""",
          """
          {"resourceType":"OperationOutcome","issue":[
            {"severity":"information","code":"informational"}]}""");

  private final Random random;
  private int ids;

  Wrapping(Random random) {
    this.random = random;
  }

  static Raw.Obj raw(String json) {
    return (Raw.Obj) JSON.read(json).orThrow();
  }

  /** Returns documents that belong together and hold each of the observations. */
  List<Raw> documents(List<Raw.Obj> observations) {
    List<Raw.Obj> stored = new ArrayList<>();
    observations.forEach(one -> stored.add(shuffled(stored(one))));
    Collections.shuffle(stored, random);
    return switch (random.nextInt(3)) {
      case 0 -> List.copyOf(stored);
      case 1 -> List.of(bundle(stored));
      default -> {
        int cut = random.nextInt(stored.size() + 1);
        yield List.of(bundle(stored.subList(0, cut)), bundle(stored.subList(cut, stored.size())));
      }
    };
  }

  private boolean sometimes() {
    return random.nextBoolean();
  }

  private Raw.Obj stored(Raw.Obj observation) {
    Raw.Obj stored = observation;
    if (sometimes()) {
      stored = stored.with("id", Raw.of("o" + ids++));
    }
    if (sometimes()) {
      stored =
          stored.with(
              "meta",
              raw(
                  """
                  {"versionId":"3","lastUpdated":"2026-03-05T00:00:00Z",
                   "tag":[{"system":"https://server.example/tags","code":"mine"}]}"""));
    }
    if (sometimes()) {
      stored = stored.with("issued", Raw.of("2026-03-05T00:00:00Z"));
    }
    if (sometimes()) {
      stored = stored.with("encounter", raw("{\"reference\":\"Encounter/e\"}"));
    }
    if (sometimes()) {
      List<Raw> identifiers = new ArrayList<>(stored.list("identifier"));
      identifiers.add(raw("{\"system\":\"https://server.example/ids\",\"value\":\"copy\"}"));
      stored = stored.with("identifier", Raw.of(identifiers));
    }
    return raw(within(RawJson.write(stored)));
  }

  private String within(String observation) {
    String more = observation;
    if (sometimes()) {
      more = more.replace("\"subject\":{", "\"subject\":{\"reference\":\"Patient/7\",");
    }
    if (sometimes()) {
      more = more.replace(" (observable entity)\"", "\"");
    }
    if (sometimes()) {
      more =
          more.replace(
              "\"code\":{\"coding\":[",
              "\"code\":{\"coding\":[{\"system\":\"https://server.example/codes\",\"code\":\"k\"},");
    }
    return more;
  }

  /** Returns an object with its members in any order, and so on within. */
  private Raw.Obj shuffled(Raw.Obj object) {
    List<String> names = new ArrayList<>(object.members().keySet());
    Collections.shuffle(names, random);
    Map<String, Raw> members = new LinkedHashMap<>();
    names.forEach(name -> members.put(name, inner(object.get(name).orElseThrow())));
    return new Raw.Obj(members);
  }

  private Raw inner(Raw value) {
    if (value instanceof Raw.Obj object) {
      return shuffled(object);
    }
    return value instanceof Raw.Arr list
        ? Raw.of(list.items().stream().map(this::inner).toList())
        : value;
  }

  private Raw.Obj bundle(List<Raw.Obj> observations) {
    String kind = KINDS.get(random.nextInt(KINDS.size()));
    List<Raw> entries = new ArrayList<>();
    observations.forEach(one -> entries.add(entry(kind, one, "match")));
    for (String guest : sometimes() ? GUESTS : List.<String>of()) {
      entries.add(entry(kind, raw(guest), "include"));
    }
    Collections.shuffle(entries, random);
    Raw.Obj bundle = raw("{\"resourceType\":\"Bundle\",\"type\":\"" + kind + "\"}");
    if (kind.equals("searchset")) {
      bundle =
          bundle
              .with("total", new Raw.Leaf(Raw.Kind.NUMBER, "" + entries.size()))
              .with(
                  "link",
                  Raw.of(List.of(raw("{\"relation\":\"self\",\"url\":\"" + SERVER + "\"}"))));
    }
    return bundle.with("entry", Raw.of(entries));
  }

  private Raw.Obj entry(String kind, Raw.Obj resource, String mode) {
    String name = Neighbours.type(resource) + "/" + resource.string("id").orElse("new");
    Map<String, Raw> entry = new LinkedHashMap<>();
    if (resource.string("id").isPresent()) {
      entry.put("fullUrl", Raw.of(SERVER + name));
    }
    entry.put("resource", resource);
    switch (kind) {
      case "searchset" -> entry.put("search", raw("{\"mode\":\"" + mode + "\"}"));
      case "history", "batch", "transaction" ->
          entry.put("request", raw("{\"method\":\"PUT\",\"url\":\"" + name + "\"}"));
      default -> {}
    }
    return new Raw.Obj(entry);
  }
}
