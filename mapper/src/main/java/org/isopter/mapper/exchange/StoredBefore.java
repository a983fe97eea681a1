package org.isopter.mapper.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.http.ServerClient;
import org.isopter.mapper.http.ServerRequest;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.value.Result;

/**
 * Finds out whether a server that refuses an update of a version holds it already: the answer to it
 * may have been lost, so that it was sent a second time.
 */
final class StoredBefore {

  /** What a server may change in what it stores. */
  private static final Set<String> OF_THE_SERVER = Set.of("id", "meta", "text");

  private final ServerClient client;

  StoredBefore(ServerClient client) {
    this.client = client;
  }

  /**
   * Returns the entries with the versions that the server holds now, where these are what was sent;
   * empty where something else was stored in their place.
   */
  Optional<List<OutgoingEntry>> now(List<OutgoingEntry> part) {
    List<OutgoingEntry> now = new ArrayList<>();
    for (OutgoingEntry entry : part) {
      Optional<OutgoingEntry> one = entry.isGuarded() ? now(entry) : Optional.of(entry);
      if (one.isEmpty()) {
        return Optional.empty();
      }
      now.add(one.get());
    }
    return Optional.of(now);
  }

  private Optional<OutgoingEntry> now(OutgoingEntry sent) {
    ServerRequest request = ServerRequest.get(client.address().at(sent.url()), ServerRequest.FHIR);
    return client
        .send(request, reply -> reply.isGood() ? json(reply.text()) : Optional.<Raw.Obj>empty())
        .filter(there -> isSame(own(sent.resource()), own(there)))
        .flatMap(there -> there.object("meta"))
        .flatMap(meta -> meta.string("versionId"))
        .map(sent::guarded);
  }

  private static Optional<Raw.Obj> json(String text) {
    return RawJson.OWN.read(text) instanceof Result.Ok<Raw> ok
            && ok.value() instanceof Raw.Obj object
        ? Optional.of(object)
        : Optional.empty();
  }

  private static Raw.Obj own(Raw.Obj resource) {
    Raw.Obj own = resource;
    for (String name : OF_THE_SERVER) {
      own = own.without(name);
    }
    return own;
  }

  /** A server puts addresses of its own in the place of references. */
  private static boolean isSame(Raw sent, Raw there) {
    if (sent instanceof Raw.Obj one && there instanceof Raw.Obj other) {
      Map<String, Raw> members = one.members();
      return members.keySet().equals(other.members().keySet())
          && members.entrySet().stream()
              .allMatch(
                  each ->
                      each.getKey().equals("reference")
                          || other
                              .get(each.getKey())
                              .filter(v -> isSame(each.getValue(), v))
                              .isPresent());
    }
    if (sent instanceof Raw.Arr one && there instanceof Raw.Arr other) {
      boolean same = one.items().size() == other.items().size();
      for (int i = 0; same && i < one.items().size(); i++) {
        same = isSame(one.items().get(i), other.items().get(i));
      }
      return same;
    }
    return sent.equals(there);
  }
}
