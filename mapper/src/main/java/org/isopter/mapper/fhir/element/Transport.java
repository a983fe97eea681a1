package org.isopter.mapper.fhir.element;

import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Takes what says how resources are kept, sent and shown, which is no finding. Only what FHIR names
 * is taken, and only in its shape: anything else may be somebody's data and is reported.
 */
public final class Transport {

  private static final Shape TYPE =
      Shape.oneOf(
          "document",
          "transaction",
          "transaction-response",
          "batch",
          "batch-response",
          "history",
          "searchset",
          "collection");
  // bdl-2, bdl-3 and bdl-4 of https://hl7.org/fhir/R4/bundle.html
  private static final Set<String> ASKING = Set.of("batch", "transaction", "history");
  private static final Set<String> ANSWERING =
      Set.of("batch-response", "transaction-response", "history");

  private static final Map<String, Shape> META =
      Map.of("versionId", Shape.ID, "lastUpdated", Shape.INSTANT, "source", Shape.URI);
  private static final Map<String, Shape> LABEL =
      Map.of("system", Shape.URI, "version", Shape.TEXT, "code", Shape.CODE, "display", Shape.TEXT);
  private static final Map<String, Shape> REQUEST =
      Map.of(
          "method",
          Shape.oneOf("GET", "HEAD", "POST", "PUT", "DELETE", "PATCH"),
          "url",
          Shape.URI,
          "ifNoneMatch",
          Shape.TEXT,
          "ifModifiedSince",
          Shape.INSTANT,
          "ifMatch",
          Shape.TEXT,
          "ifNoneExist",
          Shape.TEXT);
  private static final Map<String, Shape> SEARCH =
      Map.of("mode", Shape.oneOf("match", "include", "outcome"));
  private static final Map<String, Shape> RESPONSE =
      Map.of(
          "status",
          Shape.TEXT,
          "location",
          Shape.URI,
          "etag",
          Shape.TEXT,
          "lastModified",
          Shape.INSTANT);

  private Transport() {}

  /** Takes the id, the place on a server and the narrative of a resource. */
  public static void resource(Cursor resource) {
    resource.drop("resourceType");
    resource.drop("id", Shape.ID);
    resource.object("meta").ifPresent(meta -> take(meta, META));
    narrative(resource);
  }

  /** Takes the words for a person to read, of a resource or of a section. */
  public static void narrative(Cursor holder) {
    holder
        .object("text")
        .ifPresent(
            text -> {
              text.expect("status", "generated");
              text.text("div")
                  .filter(div -> !Narrative.isPlain(div))
                  .ifPresent(div -> text.fault("div", "\"" + div + "\"", Narrative.WANTED));
            });
  }

  /** Reports what a document lacks (bdl-9, bdl-10, bdl-11); takes nothing. */
  public static void document(Cursor bundle) {
    if (!bundle.peek("type").equals("document")) {
      return;
    }
    bundle.require("identifier");
    bundle.require("timestamp");
    bundle.objects("entry").stream()
        .limit(1)
        .flatMap(entry -> entry.object("resource").stream())
        .map(resource -> resource.peek("resourceType"))
        .filter(type -> !type.equals("Composition"))
        .forEach(
            type ->
                bundle.fault(
                    "entry[0].resource", "\"" + type + "\"", "a document's \"Composition\" first"));
  }

  /** Takes the id, the labels, the type and the time of a bundle. */
  public static void bundle(Cursor bundle) {
    bundle.drop("resourceType");
    bundle.drop("id", Shape.ID);
    bundle.object("meta").ifPresent(Transport::labels);
    bundle.require("type");
    bundle.drop("type", TYPE);
    bundle.drop("timestamp", Shape.INSTANT);
  }

  private static void labels(Cursor meta) {
    take(meta, META);
    for (String name : List.of("security", "tag")) {
      meta.objects(name).forEach(label -> take(label, LABEL));
    }
  }

  /**
   * Takes how an entry was asked for, found or stored.
   *
   * @param type the type of its bundle, which says what an entry must have and cannot have
   */
  public static void entry(Cursor entry, String type) {
    hasOnlyIf(ASKING.contains(type), entry, "request", type);
    hasOnlyIf(ANSWERING.contains(type), entry, "response", type);
    if (!type.equals("searchset")) {
      hasOnlyIf(false, entry, "search", type);
    }
    entry.object("request").ifPresent(Transport::request);
    entry.object("response").ifPresent(Transport::response);
    entry.object("search").ifPresent(Transport::search);
  }

  private static void request(Cursor request) {
    request.require("method");
    request.require("url");
    take(request, REQUEST);
  }

  private static void response(Cursor response) {
    response.require("status");
    take(response, RESPONSE);
    response.drop("outcome");
  }

  private static void search(Cursor search) {
    take(search, SEARCH);
    search.number("score");
  }

  private static void hasOnlyIf(boolean wanted, Cursor entry, String name, String type) {
    if (wanted) {
      entry.require(name);
    } else if (entry.has(name)) {
      entry.fault(name, "an element", "none in a bundle of type \"" + type + "\"");
    }
  }

  private static void take(Cursor at, Map<String, Shape> names) {
    names.forEach(at::drop);
  }
}
