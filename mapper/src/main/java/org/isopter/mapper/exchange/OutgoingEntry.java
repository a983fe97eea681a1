package org.isopter.mapper.exchange;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * An entry of a transaction that may arrive twice and is stored once: an update, or a creation
 * under a condition.
 *
 * @param entry the entry as it is sent
 */
record OutgoingEntry(Raw.Obj entry) {

  private static final String UUID = "[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}";

  /**
   * Returns an entry that may be sent more than once, or why it may not. A creation without a
   * condition gets one, by the first identifier of the resource that has a system.
   *
   * @param byId whether an update may name its resource by an id that is no UUID: on another
   *     server, that id is somebody else's
   */
  static Result<OutgoingEntry> of(Raw.Obj entry, boolean byId) {
    Raw.Obj request = entry.object("request").orElse(Raw.Obj.EMPTY);
    String method = request.string("method").orElse("");
    if (entry.object("resource").isEmpty() || request.string("url").isEmpty()) {
      return Result.refused(
          Fault.of("request", "no request with a resource", "a resource, and how to store it"));
    }
    return switch (method) {
      case "PUT" -> update(entry, request.string("url").orElse(""), byId);
      case "POST" -> creation(entry, request);
      default -> Result.refused(Fault.of("request.method", "\"" + method + "\"", "PUT or POST"));
    };
  }

  private static Result<OutgoingEntry> update(Raw.Obj entry, String url, boolean byId) {
    String id = url.substring(url.indexOf('/') + 1);
    if (url.contains("?") || byId || id.matches(UUID)) {
      return Result.ok(new OutgoingEntry(entry));
    }
    return Result.refused(
        new Fault(
            "request.url",
            "an id, which another server may have given to something else",
            "a search by identifier, or a UUID",
            "give --by-id if the resources come from this very server"));
  }

  private static Result<OutgoingEntry> creation(Raw.Obj entry, Raw.Obj request) {
    if (request.string("ifNoneExist").isPresent()) {
      return Result.ok(new OutgoingEntry(entry));
    }
    return entry.object("resource").orElse(Raw.Obj.EMPTY).objects("identifier").stream()
        .flatMap(identifier -> condition(identifier).stream())
        .findFirst()
        .map(condition -> request.with("ifNoneExist", Raw.of(condition)))
        .map(safe -> Result.ok(new OutgoingEntry(entry.with("request", safe))))
        .orElseGet(
            () ->
                Result.refused(
                    Fault.of(
                        "request",
                        "POST without ifNoneExist, which stores it again each time it is sent",
                        "ifNoneExist, or a resource with an identifier that has a system")));
  }

  private static Optional<String> condition(Raw.Obj identifier) {
    Optional<String> value = identifier.string("value").map(OutgoingEntry::escaped);
    return identifier
        .string("system")
        .map(OutgoingEntry::escaped)
        .flatMap(system -> value.map(text -> "identifier=" + system + "%7C" + text));
  }

  private static String escaped(String text) {
    String commas = text.replace("\\", "\\\\").replace(",", "\\,").replace("|", "\\|");
    return java.net.URLEncoder.encode(commas.replace("$", "\\$"), UTF_8);
  }

  /** Returns the name by which other entries refer to it; empty where it has none. */
  String fullUrl() {
    return entry.string("fullUrl").orElse("");
  }

  /** Returns the resource. */
  Raw.Obj resource() {
    return entry.object("resource").orElse(Raw.Obj.EMPTY);
  }

  /** Returns the type of the resource. */
  String type() {
    return resource().string("resourceType").orElse("");
  }

  private Raw.Obj request() {
    return entry.object("request").orElse(Raw.Obj.EMPTY);
  }

  /** Returns the method and the address, for people. */
  String shown() {
    String none = request().string("ifNoneExist").map(text -> " if none has " + text).orElse("");
    String match = request().string("ifMatch").map(text -> " if it is still " + text).orElse("");
    return method() + " " + url() + none + match;
  }

  private String method() {
    return request().string("method").orElse("");
  }

  /** Returns the address below that of the server. */
  String url() {
    return request().string("url").orElse("");
  }

  /** Returns the search that finds it on the server; empty where it has an id. */
  Optional<String> search() {
    Optional<String> none = request().string("ifNoneExist").map(text -> url() + "?" + text);
    return none.or(() -> Optional.of(url()).filter(text -> text.contains("?")));
  }

  /** Returns what it is stored under, without naming anybody. */
  String name() {
    return Digest.of(search().orElse(url()));
  }

  /** Returns the digest of the resource. */
  String digest() {
    return Digest.of(RawJson.write(resource()));
  }

  /** Returns how many bytes it takes. */
  int size() {
    return RawJson.write(entry).getBytes(UTF_8).length;
  }

  /** Says whether it asks for a version. */
  boolean isGuarded() {
    return request().string("ifMatch").isPresent();
  }

  /**
   * Returns this entry for what was stored before: where the resource is another now, an update of
   * the version that was stored, and of no other.
   */
  OutgoingEntry after(StoredEntry before) {
    boolean known = !before.place().isEmpty() && !before.version().isEmpty();
    if (!known || !method().equals("PUT") || before.digest().equals(digest())) {
      return this;
    }
    String id = before.place().substring(before.place().indexOf('/') + 1);
    Raw.Obj request = request().with("url", Raw.of(before.place()));
    return new OutgoingEntry(
            entry.with("resource", resource().with("id", Raw.of(id))).with("request", request))
        .guarded(before.version());
  }

  /** Returns this entry as an update of one version and no other. */
  OutgoingEntry guarded(String version) {
    Raw.Obj request = request().with("ifMatch", Raw.of("W/\"" + version + "\""));
    return new OutgoingEntry(entry.with("request", request));
  }

  /** Returns the names that its references give. */
  Set<String> references() {
    Set<String> found = new HashSet<>();
    resource().leaves().stream()
        .filter(leaf -> leaf.at().endsWith("/reference"))
        .forEach(leaf -> leaf.value().string().ifPresent(found::add));
    return found;
  }

  /** Returns this entry with references to entries that are stored already put in place. */
  OutgoingEntry pointing(Map<String, String> places) {
    return places.isEmpty()
        ? this
        : new OutgoingEntry(entry.with("resource", pointing(resource(), places)));
  }

  private static Raw pointing(Raw value, Map<String, String> places) {
    if (value instanceof Raw.Obj object) {
      Map<String, Raw> all = new LinkedHashMap<>();
      object
          .members()
          .forEach(
              (name, child) ->
                  all.put(
                      name,
                      name.equals("reference") ? placed(child, places) : pointing(child, places)));
      return new Raw.Obj(all);
    }
    if (value instanceof Raw.Arr list) {
      List<Raw> all = new ArrayList<>();
      list.items().forEach(item -> all.add(pointing(item, places)));
      return new Raw.Arr(all);
    }
    return value;
  }

  private static Raw placed(Raw reference, Map<String, String> places) {
    Optional<String> name = reference.string();
    return name.isPresent()
        ? name.flatMap(text -> Optional.ofNullable(places.get(text)))
            .<Raw>map(Raw::of)
            .orElse(reference)
        : pointing(reference, places);
  }
}
