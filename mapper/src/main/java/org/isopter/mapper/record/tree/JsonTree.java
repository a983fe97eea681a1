package org.isopter.mapper.record.tree;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.json.JsonFactory;

/** Reads JSON text into nodes that know where they stand. */
public final class JsonTree {

  private static final JsonFactory FACTORY = JsonFactory.builder().build();

  private final JsonParser parser;
  private final Complaints complaints;

  private JsonTree(JsonParser parser, Complaints complaints) {
    this.parser = parser;
    this.complaints = complaints;
  }

  /** Returns the tree, or nothing when the text is no JSON at all. */
  public static Optional<Node> read(String text, Complaints complaints) {
    try (JsonParser parser = FACTORY.createParser(ObjectReadContext.empty(), text)) {
      return new JsonTree(parser, complaints).document();
    } catch (JacksonException e) {
      return complaints.add(place(e), words(e), "well-formed JSON", advice(e));
    }
  }

  private Optional<Node> document() {
    if (parser.nextToken() == null) {
      return complaints.add(TextPlace.root(1, 1), "nothing", "a record");
    }
    TokenStreamLocation start = parser.currentTokenLocation();
    Node whole = node(TextPlace.root(start.getLineNr(), start.getColumnNr()), 0);
    if (parser.nextToken() != null) {
      TokenStreamLocation more = parser.currentTokenLocation();
      complaints.add(
          TextPlace.root(more.getLineNr(), more.getColumnNr()),
          "something behind the end of the record",
          "one record and nothing else");
    }
    return Optional.of(whole);
  }

  private Node node(TextPlace place, int depth) {
    Limits.depth(place, depth);
    return switch (parser.currentToken()) {
      case START_OBJECT -> tree(place, depth);
      case START_ARRAY -> series(place, depth);
      case VALUE_STRING -> leaf(place, Node.Kind.TEXT);
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> leaf(place, Node.Kind.NUMBER);
      case VALUE_TRUE, VALUE_FALSE -> leaf(place, Node.Kind.TRUTH);
      default -> leaf(place, Node.Kind.NOTHING);
    };
  }

  private Node tree(TextPlace place, int depth) {
    Map<String, Node.Member> members = new LinkedHashMap<>();
    while (parser.nextToken() == JsonToken.PROPERTY_NAME) {
      String name = parser.currentName();
      TokenStreamLocation at = parser.currentTokenLocation();
      TextPlace key = place.key(name, at.getLineNr(), at.getColumnNr());
      parser.nextToken();
      TokenStreamLocation start = parser.currentTokenLocation();
      Node value = node(place.key(name, start.getLineNr(), start.getColumnNr()), depth + 1);
      if (members.putIfAbsent(name, new Node.Member(key, value)) != null) {
        Limits.duplicate(key, complaints);
      }
    }
    return new Node.Tree(place, members);
  }

  private Node series(TextPlace place, int depth) {
    List<Node> items = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      TokenStreamLocation start = parser.currentTokenLocation();
      items.add(node(place.item(items.size(), start.getLineNr(), start.getColumnNr()), depth + 1));
    }
    return new Node.Series(place, items);
  }

  private Node leaf(TextPlace place, Node.Kind kind) {
    return new Node.Leaf(place, kind, parser.getString());
  }

  private static TextPlace place(JacksonException e) {
    TokenStreamLocation at = e.getLocation();
    return at == null ? TextPlace.root(1, 1) : TextPlace.root(at.getLineNr(), at.getColumnNr());
  }

  private static String words(JacksonException e) {
    String message = e.getOriginalMessage();
    int detail = message.indexOf(" (start marker");
    String brief = detail < 0 ? message : message.substring(0, detail);
    return brief.substring(0, 1).toLowerCase(Locale.ROOT) + brief.substring(1);
  }

  private static String advice(JacksonException e) {
    String message = e.getOriginalMessage();
    if (message.startsWith("Unexpected end-of-input")) {
      return "the record was cut off: a closing bracket or quote is missing";
    }
    if (message.contains("double-quote")) {
      return "JSON puts keys and texts in double quotes, and no comma before a closing bracket";
    }
    return message.contains("Leading zeroes") ? "put an identifier in quotes" : "";
  }
}
