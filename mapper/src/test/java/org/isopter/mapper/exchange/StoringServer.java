package org.isopter.mapper.exchange;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.isopter.mapper.http.ScriptedServer.Answer;
import org.isopter.mapper.http.ScriptedServer.Asked;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;

/**
 * Stores what transactions send, as FHIR R4 "RESTful API" says of conditional updates and creations
 * and of If-Match; it knows a resource by the text of its condition.
 */
final class StoringServer {

  private final Map<String, String> places = new HashMap<>();
  private final Map<String, Raw.Obj> stored = new LinkedHashMap<>();
  private final Map<String, Integer> versions = new HashMap<>();
  private final AtomicInteger writes = new AtomicInteger();

  /** Returns what is stored, by where it is. */
  Map<String, Raw.Obj> stored() {
    return stored;
  }

  /** Returns what is stored at a place. */
  Raw.Obj resource(String place) {
    return Optional.ofNullable(stored.get(place)).orElseThrow();
  }

  /** Returns how often something was stored that was not there as it is. */
  int writes() {
    return writes.get();
  }

  /** Changes what is stored, as somebody else would. */
  void change(String place, Raw.Obj to) {
    stored.put(place, to);
    versions.merge(place, 1, Integer::sum);
  }

  synchronized Answer answer(Asked asked) {
    if (asked.method().equals("GET")) {
      String place = asked.uri().substring("/fhir/".length());
      return Optional.ofNullable(stored.get(place))
          .map(resource -> Answer.of(200, RawJson.write(shown(place, resource))))
          .orElse(Answer.of(404, ""));
    }
    List<Raw.Obj> entries = RawJson.OWN.read(asked.body()).orThrow().objects("entry");
    if (entries.stream().anyMatch(this::isStale)) {
      return Answer.of(412, "{\"issue\":[{\"code\":\"conflict\"}]}");
    }
    List<Raw> answers = new ArrayList<>();
    entries.forEach(entry -> answers.add(store(entry)));
    return Answer.of(200, RawJson.write(new Raw.Obj(Map.of("entry", Raw.of(answers)))));
  }

  private Raw.Obj shown(String place, Raw.Obj resource) {
    String version = String.valueOf(versions.get(place));
    return resource.with("meta", new Raw.Obj(Map.of("versionId", Raw.of(version))));
  }

  private boolean isStale(Raw.Obj entry) {
    Raw request = entry.object("request").orElseThrow();
    String now = "W/\"" + versions.get(request.string("url").orElse("")) + "\"";
    return request.string("ifMatch").filter(wanted -> !wanted.equals(now)).isPresent();
  }

  private Raw store(Raw.Obj entry) {
    Raw request = entry.object("request").orElseThrow();
    String url = request.string("url").orElseThrow();
    String key = request.string("ifNoneExist").map(none -> url + "?" + none).orElse(url);
    String type = url.replaceAll("[?/].*", "");
    boolean there = places.containsKey(key) || stored.containsKey(key);
    String place = key;
    if (key.contains("?")) {
      place = places.computeIfAbsent(key, any -> type + "/" + (places.size() + 1));
    }
    Raw.Obj resource = entry.object("resource").orElseThrow().without("id");
    boolean keep = there && request.string("ifNoneExist").isPresent();
    if (!keep && !resource.equals(stored.get(place))) {
      stored.put(place, resource);
      versions.merge(place, 1, Integer::sum);
      writes.incrementAndGet();
    }
    return response(there, place, String.valueOf(versions.get(place)));
  }

  private static Raw response(boolean there, String place, String version) {
    Map<String, Raw> response = new LinkedHashMap<>();
    response.put("status", Raw.of(there ? "200 OK" : "201 Created"));
    response.put("location", Raw.of(place + "/_history/" + version));
    response.put("etag", Raw.of("W/\"" + version + "\""));
    return new Raw.Obj(Map.of("response", new Raw.Obj(response)));
  }
}
