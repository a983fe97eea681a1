package org.isopter.profiles.compiled;

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
  private String resourceType() {
    require("resourceType".equals(parser.nextName()), "a resource that does not begin with a type");
    require(parser.nextToken() == JsonToken.VALUE_STRING, "a type that is no text");
    String type = parser.getString();
    require(standard.isComplex(type) && type.indexOf('.') < 0, "a resource of type " + type);
    return type;
  }

  private void members(Item item) {
    for (String key = parser.nextName(); key != null; key = parser.nextName()) {
      String type = item.type();
      String name = key;
      Member member =
          standard.member(type, key).orElseThrow(() -> new Unknown(type + " with " + name));
      require(!item.has(member.name()), member, "twice");
      member(item, member, parser.nextToken());
    }
    standard.lacking(item).ifPresent(lack -> unknown(item.type() + " without " + lack));
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
    if (token == JsonToken.START_OBJECT && member.type().equals("Resource")) {
      members(item.add(resource(member), index));
    } else if (token == JsonToken.START_OBJECT && standard.isComplex(member.type())) {
      Item added = item.add(member, index);
      members(added);
      require(!added.members().isEmpty(), member, "that is empty");
    } else {
      require(isPrimitive(member, token), member, "that is not plain");
      item.add(member, index).write(parser.getString());
    }
  }

  private Member resource(Member member) {
    String type = resourceType();
    require(!type.equals("Bundle"), "a bundle in a bundle");
    return new Member(member.key(), member.name(), member.stem(), type, true, false);
  }

  private boolean isPrimitive(Member member, JsonToken token) {
    return switch (token) {
      case VALUE_STRING -> Primitives.isText(member.type(), parser.getString());
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT ->
          Primitives.isNumber(member.type(), parser.getString());
      case VALUE_TRUE, VALUE_FALSE -> member.type().equals("boolean");
      default -> false;
    };
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
