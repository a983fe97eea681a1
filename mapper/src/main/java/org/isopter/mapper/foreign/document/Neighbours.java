package org.isopter.mapper.foreign.document;

import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.isopter.mapper.json.Raw;

/** The resources of one document that others may refer to. */
public final class Neighbours {

  private static final Pattern RELATIVE = Pattern.compile("[A-Z][A-Za-z]+/[^/]+(/_history/[^/]+)?");

  private static final String UUID = "urn:uuid:";

  private final Map<String, Raw.Obj> byName = new HashMap<>();
  private final Map<String, Raw.Obj> byId = new HashMap<>();
  private final IdentityHashMap<Raw, String> servers = new IdentityHashMap<>();

  /** Adds a resource under its address and under {@code Type/id}. */
  void add(Optional<String> fullUrl, Raw.Obj resource) {
    fullUrl.ifPresent(url -> byName.putIfAbsent(url, resource));
    resource.string("id").ifPresent(id -> byName.putIfAbsent(type(resource) + "/" + id, resource));
    resource.string("id").ifPresent(id -> byId.putIfAbsent(id, resource));
    fullUrl.flatMap(FullUrl::server).ifPresent(server -> servers.put(resource, server + "/"));
  }

  /** Notes that a resource was made of another, whose references it has. */
  public void standsWith(Raw.Obj from, Raw.Obj made) {
    String server = servers.get(from);
    if (server != null) {
      servers.put(made, server);
    }
  }

  /** Returns a reference within a resource in full where its full URL tells the server. */
  String inFull(Raw holder, String reference) {
    boolean relative = RELATIVE.matcher(reference).matches();
    return relative ? servers.getOrDefault(holder, "") + reference : reference;
  }

  /** Returns the resource that a reference within a resource leads to. */
  public Optional<Raw.Obj> find(Raw holder, String reference) {
    if (reference.startsWith("#")) {
      String id = reference.substring(1);
      return holder.objects("contained").stream()
          .filter(inner -> inner.string("id").equals(Optional.of(id)))
          .findFirst();
    }
    return Optional.ofNullable(byName.get(reference))
        .or(() -> byTail(reference))
        .or(() -> byUuid(reference));
  }

  /** A resource that was taken out of its bundle has the id of its address, and no address. */
  private Optional<Raw.Obj> byUuid(String reference) {
    return reference.startsWith(UUID)
        ? Optional.ofNullable(byId.get(reference.substring(UUID.length())))
        : Optional.empty();
  }

  /**
   * Returns true if two resources refer to two persons.
   *
   * @param name the element that refers, as {@code subject}
   * @param otherName the element that refers in the other resource
   */
  public boolean differ(Raw one, String name, Raw other, String otherName) {
    String first = reference(one, name);
    String second = reference(other, otherName);
    if (first.isEmpty() || second.isEmpty() || tail(first).equals(tail(second))) {
      return false;
    }
    Optional<Raw.Obj> found = find(one, first);
    return found.isEmpty() || find(other, second).filter(found.get()::equals).isEmpty();
  }

  private static String reference(Raw holder, String name) {
    return holder.object(name).flatMap(to -> to.string("reference")).orElse("");
  }

  /** Returns the type of a resource; empty where it states none. */
  public static String type(Raw resource) {
    return resource.string("resourceType").orElse("");
  }

  /** An absolute or versioned reference ends like the relative one. */
  private Optional<Raw.Obj> byTail(String reference) {
    return Optional.ofNullable(byName.get(tail(reference)));
  }

  private static String tail(String reference) {
    int history = reference.indexOf("/_history/");
    String plain = history < 0 ? reference : reference.substring(0, history);
    int id = plain.lastIndexOf('/');
    int type = id < 0 ? -1 : plain.lastIndexOf('/', id - 1);
    return plain.substring(type + 1);
  }
}
