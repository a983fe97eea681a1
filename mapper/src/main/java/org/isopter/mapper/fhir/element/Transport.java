package org.isopter.mapper.fhir.element;

import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Takes what says how resources are kept, sent and shown, which is no finding. Only what FHIR names
 * is taken, and only in its shape: anything else may be somebody's data and is reported.
 */
public final class Transport {

  private static final PrimitiveForm TYPE =
      PrimitiveForm.oneOf(
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

  private static final Map<String, PrimitiveForm> META =
      Map.of(
          "versionId",
          PrimitiveForm.ID,
          "lastUpdated",
          PrimitiveForm.INSTANT,
          "source",
          PrimitiveForm.URI);
  private static final Map<String, PrimitiveForm> LABEL =
      Map.of(
          "system",
          PrimitiveForm.URI,
          "version",
          PrimitiveForm.TEXT,
          "code",
          PrimitiveForm.CODE,
          "display",
          PrimitiveForm.TEXT);
  private static final Map<String, PrimitiveForm> REQUEST =
      Map.of(
          "method",
          PrimitiveForm.oneOf("GET", "HEAD", "POST", "PUT", "DELETE", "PATCH"),
          "url",
          PrimitiveForm.URI,
          "ifNoneMatch",
          PrimitiveForm.TEXT,
          "ifModifiedSince",
          PrimitiveForm.INSTANT,
          "ifMatch",
          PrimitiveForm.TEXT,
          "ifNoneExist",
          PrimitiveForm.TEXT);
  private static final Map<String, PrimitiveForm> SEARCH =
      Map.of("mode", PrimitiveForm.oneOf("match", "include", "outcome"));
  private static final Map<String, PrimitiveForm> RESPONSE =
      Map.of(
          "status",
          PrimitiveForm.TEXT,
          "location",
          PrimitiveForm.URI,
          "etag",
          PrimitiveForm.TEXT,
          "lastModified",
          PrimitiveForm.INSTANT);

  private Transport() {}

  /** Takes the id, the place on a server and the narrative of a resource. */
  public static void resource(ElementCursor resource) {
    resource.drop("resourceType");
    resource.drop("id", PrimitiveForm.ID);
    resource.object("meta").ifPresent(meta -> take(meta, META));
    narrative(resource);
  }

  /** Takes the words for a person to read, of a resource or of a section. */
  public static void narrative(ElementCursor holder) {
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
  public static void document(ElementCursor bundle) {
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
  public static void bundle(ElementCursor bundle) {
    bundle.drop("resourceType");
    bundle.drop("id", PrimitiveForm.ID);
    bundle.object("meta").ifPresent(Transport::labels);
    bundle.require("type");
    bundle.drop("type", TYPE);
    bundle.drop("timestamp", PrimitiveForm.INSTANT);
  }

  private static void labels(ElementCursor meta) {
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
  public static void entry(ElementCursor entry, String type) {
    hasOnlyIf(ASKING.contains(type), entry, "request", type);
    hasOnlyIf(ANSWERING.contains(type), entry, "response", type);
    if (!type.equals("searchset")) {
      hasOnlyIf(false, entry, "search", type);
    }
    entry.object("request").ifPresent(Transport::request);
    entry.object("response").ifPresent(Transport::response);
    entry.object("search").ifPresent(Transport::search);
  }

  private static void request(ElementCursor request) {
    request.require("method");
    request.require("url");
    take(request, REQUEST);
  }

  private static void response(ElementCursor response) {
    response.require("status");
    take(response, RESPONSE);
    response.drop("outcome");
  }

  private static void search(ElementCursor search) {
    take(search, SEARCH);
    search.number("score");
  }

  private static void hasOnlyIf(boolean wanted, ElementCursor entry, String name, String type) {
    if (wanted) {
      entry.require(name);
    } else if (entry.has(name)) {
      entry.fault(name, "an element", "none in a bundle of type \"" + type + "\"");
    }
  }

  private static void take(ElementCursor at, Map<String, PrimitiveForm> names) {
    names.forEach(at::drop);
  }
}
