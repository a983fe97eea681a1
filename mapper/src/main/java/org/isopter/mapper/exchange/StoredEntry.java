package org.isopter.mapper.exchange;

import java.util.LinkedHashMap;
import java.util.Map;
import org.isopter.mapper.json.Raw;

/**
 * What became of an entry.
 *
 * @param fullUrl the name by which other entries refer to it; may be empty
 * @param name what it is stored under, as {@link OutgoingEntry#name()}
 * @param place where the server put it, such as {@code Observation/12}
 * @param version the version that it has there; empty where the server tells none
 * @param digest the digest of the resource as it was sent
 */
record StoredEntry(String fullUrl, String name, String place, String version, String digest) {

  static StoredEntry of(Raw line) {
    return new StoredEntry(
        line.string("fullUrl").orElse(""),
        line.string("name").orElse(""),
        line.string("place").orElse(""),
        line.string("version").orElse(""),
        line.string("digest").orElse(""));
  }

  Raw.Obj line() {
    Map<String, Raw> all = new LinkedHashMap<>();
    all.put("fullUrl", Raw.of(fullUrl));
    all.put("name", Raw.of(name));
    all.put("place", Raw.of(place));
    all.put("version", Raw.of(version));
    all.put("digest", Raw.of(digest));
    return new Raw.Obj(all);
  }
}
