package org.isopter.mapper.http;

import java.net.URI;
import java.util.Map;
import java.util.Optional;

/**
 * A request that may be sent more than once without doing more than once what it asks for.
 *
 * @param method the HTTP method
 * @param uri where to
 * @param headers its headers, without the token
 * @param body what is sent; empty for nothing
 */
public record ServerRequest(
    String method, URI uri, Map<String, String> headers, Optional<String> body) {

  /** The media type of FHIR in JSON. */
  public static final String FHIR = "application/fhir+json";

  /** The media type of lines of FHIR. */
  public static final String LINES = "application/fhir+ndjson";

  public ServerRequest {
    headers = Map.copyOf(headers);
  }

  /** Returns a request for what is there. */
  public static ServerRequest get(URI uri, String accepted) {
    return new ServerRequest("GET", uri, Map.of("Accept", accepted), Optional.empty());
  }

  /** Returns a request that sends a transaction. */
  public static ServerRequest transaction(URI base, String bundle) {
    Map<String, String> headers = Map.of("Accept", FHIR, "Content-Type", FHIR);
    return new ServerRequest("POST", base, headers, Optional.of(bundle));
  }

  /** Returns this request with one more header. */
  public ServerRequest with(String name, String value) {
    Map<String, String> all = new java.util.HashMap<>(headers);
    all.put(name, value);
    return new ServerRequest(method, uri, all, body);
  }

  /** Returns this request to another address. */
  ServerRequest to(URI other) {
    return new ServerRequest(method, other, headers, body);
  }
}
