package org.isopter.mapper.exchange;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.net.URI;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.http.ServerClient;
import org.isopter.mapper.http.ServerException;
import org.isopter.mapper.http.ServerReply;
import org.isopter.mapper.http.ServerRequest;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * Fetches what a request to a FHIR server answers: a search with all its pages, {@code $everything}
 * of a patient, or a bulk export. One page, or one line of an export, is held at a time.
 */
public final class Fetcher {

  private static final Set<String> PAGES = Set.of("searchset", "history", "collection");

  private final ServerClient client;
  private final FetchedLines lines;

  /** Makes a fetcher of what goes into lines. */
  public Fetcher(ServerClient client, FetchedLines lines) {
    this.client = client;
    this.lines = lines;
  }

  /**
   * Fetches all that a request answers.
   *
   * @param request a request of FHIR below the address of the server, such as {@code
   *     Observation?patient=1}, {@code Patient/1/$everything} or {@code $export}
   * @throws ServerException when the server does not give all of it
   */
  public Fetched fetch(String request) {
    int query = request.indexOf('?');
    String path = query < 0 ? request : request.substring(0, query);
    URI uri = client.address().at(request);
    return path.endsWith("$export") ? new BulkExport(client, lines).fetch(uri) : pages(uri);
  }

  private Fetched pages(URI first) {
    Fetched all = Fetched.NOTHING;
    Set<String> seen = new HashSet<>();
    Optional<URI> next = Optional.of(first);
    while (next.isPresent()) {
      URI at = next.get();
      if (!seen.add(at.toString())) {
        throw refused(at, "a next page that was there already", "an end");
      }
      Page page = client.send(ServerRequest.get(at, ServerRequest.FHIR), this::page);
      page.resources().forEach(one -> lines.line(one.getBytes(UTF_8)));
      page.troubles().forEach(one -> lines.trouble(one.getBytes(UTF_8)));
      all = all.plus(page.fetched());
      next = page.next().map(link -> client.address().link(link, at));
    }
    return all;
  }

  /** One page: its documents, what the server says that it could not give, and the next. */
  private record Page(List<String> resources, List<String> troubles, Optional<String> next) {
    Fetched fetched() {
      return new Fetched(1, resources.size(), 0, troubles.size());
    }
  }

  private Page page(ServerReply reply) throws IOException {
    if (!reply.isGood()) {
      throw refusal(reply.uri(), reply.status(), client.said(reply.text()));
    }
    Raw raw = document(reply.bytes());
    String type = raw.string("resourceType").orElse("");
    if (!type.equals("Bundle")) {
      boolean outcome = type.isEmpty() || type.equals("OperationOutcome");
      if (outcome) {
        throw refused(reply.uri(), "no resource that was asked for", "a Bundle");
      }
      return new Page(List.of(RawJson.write(raw)), List.of(), Optional.empty());
    }
    if (!PAGES.contains(raw.string("type").orElse(""))) {
      throw refused(reply.uri(), "a Bundle of another type", "one of " + PAGES);
    }
    // A history says by its entries what was deleted, and is handed on as it is.
    return raw.string("type").equals(Optional.of("history"))
        ? new Page(List.of(RawJson.write(raw)), List.of(), next(raw))
        : new Page(resources(raw, false), resources(raw, true), next(raw));
  }

  private static List<String> resources(Raw bundle, boolean outcomes) {
    return bundle.objects("entry").stream()
        .flatMap(entry -> entry.object("resource").stream())
        .filter(resource -> isOutcome(resource) == outcomes)
        .map(RawJson::write)
        .toList();
  }

  private static boolean isOutcome(Raw.Obj resource) {
    return resource.string("resourceType").equals(Optional.of("OperationOutcome"));
  }

  private static Optional<String> next(Raw bundle) {
    return bundle.objects("link").stream()
        .filter(link -> link.string("relation").equals(Optional.of("next")))
        .flatMap(link -> link.string("url").stream())
        .findFirst();
  }

  /**
   * Reads a document.
   *
   * @throws IOException when it is none: an answer that was cut off is asked for again
   */
  static Raw document(byte[] json) throws IOException {
    if (RawJson.OWN.read(json) instanceof Result.Ok<Raw> ok
        && ok.value() instanceof Raw.Obj object) {
      return object;
    }
    throw new IOException("an answer that is no JSON, or not all of it");
  }

  static ServerException refusal(URI uri, int status, String said) {
    return ServerException.ofOne(
        Fault.of(ServerException.shown(uri), "status " + status + said, "what was asked for"),
        status);
  }

  static ServerException refused(URI uri, String seen, String wanted) {
    return ServerException.ofAll(Fault.of(ServerException.shown(uri), seen, wanted));
  }
}
