package org.isopter.profiles.compiled;

import java.util.HashSet;
import java.util.Set;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.json.JsonFactory;

/** Reads JSON as items; what does not fit the table of the standard is unknown. */
final class ItemParser {

  private static final JsonFactory JSON = JsonFactory.builder().build();

  private final Standard standard;
  private final JsonParser parser;

  /** The times that were looked at: many of a bundle are the same. */
  private final Set<String> times = new HashSet<>();

  private ItemParser(Standard standard, JsonParser parser) {
    this.standard = standard;
    this.parser = parser;
  }

  /**
   * Returns the resource.
   *
   * @throws Unknown when it is broken, or holds what the table does not have
   */
  static Item read(Standard standard, String json) {
    try (JsonParser parser = JSON.createParser(ObjectReadContext.empty(), json)) {
      return new ItemParser(standard, parser).whole();
    } catch (JacksonException broken) {
      throw new Unknown("JSON that cannot be read");
    }
  }

  private Item whole() {
    require(parser.nextToken() == JsonToken.START_OBJECT, "no object");
    Item root = Item.root(Member.ofResource(resourceType()));
    members(root);
    require(parser.nextToken() == null, "more than one value");
    return root;
  }

  /** Reads the type that a resource begins with. */
  private TypeTable resourceType() {
    require("resourceType".equals(parser.nextName()), "a resource that does not begin with a type");
    require(parser.nextToken() == JsonToken.VALUE_STRING, "a type that is no text");
    String type = parser.getString();
    return standard.resource(type).orElseThrow(() -> new Unknown("a resource of type " + type));
  }

  private void members(Item item) {
    TypeTable type = item.table();
    for (String key = parser.nextName(); key != null; key = parser.nextName()) {
      Member member = type.member(key);
      if (member == null) {
        throw new Unknown(type.name() + " with " + key);
      }
      require(item.isFirst(member), member, "twice");
      member(item, member, parser.nextToken());
    }
    item.lacking().ifPresent(lack -> unknown(type.name() + " without " + lack));
  }

  private void member(Item item, Member member, JsonToken token) {
    if (!member.repeats()) {
      value(item, member, Member.SINGLE, token);
      return;
    }
    require(token == JsonToken.START_ARRAY, member, "that is no list");
    int index = 0;
    JsonToken each = parser.nextToken();
    require(each != JsonToken.END_ARRAY, member, "that is empty");
    for (; each != JsonToken.END_ARRAY; each = parser.nextToken()) {
      value(item, member, index++, each);
    }
  }

  private void value(Item item, Member member, int index, JsonToken token) {
    if (token == JsonToken.START_OBJECT && member.table().isComplex()) {
      Item added = item.add(member, index);
      members(added);
      require(!added.members().isEmpty(), member, "that is empty");
    } else if (token == JsonToken.START_OBJECT && member.type().equals("Resource")) {
      members(item.add(resource(member), index));
    } else {
      String text = parser.getString();
      require(isPrimitive(member.table(), token, text), member, "that is not plain");
      item.add(member, index).write(text);
    }
  }

  private Member resource(Member member) {
    TypeTable type = resourceType();
    require(!type.name().equals("Bundle"), "a bundle in a bundle");
    return member.holding(type);
  }

  private boolean isPrimitive(TypeTable type, JsonToken token, String text) {
    return switch (token) {
      case VALUE_STRING -> type.name().equals("dateTime") ? isTime(type, text) : type.isText(text);
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> Primitives.isNumber(type.name(), text);
      case VALUE_TRUE, VALUE_FALSE -> type.name().equals("boolean");
      default -> false;
    };
  }

  private boolean isTime(TypeTable type, String text) {
    boolean fits = times.contains(text) || type.isText(text);
    if (fits) {
      times.add(text);
    }
    return fits;
  }

  private static void require(boolean fits, String otherwise) {
    if (!fits) {
      unknown(otherwise);
    }
  }

  private static void require(boolean fits, Member member, String otherwise) {
    if (!fits) {
      unknown(member.key() + " " + otherwise);
    }
  }

  private static void unknown(String what) {
    throw new Unknown(what);
  }
}
