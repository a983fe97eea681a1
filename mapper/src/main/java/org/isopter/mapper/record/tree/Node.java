package org.isopter.mapper.record.tree;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A piece of a record's text, the same for JSON and YAML; it knows where it stands. */
public sealed interface Node {

  /** What a single value is, before anything is known of what it ought to be. */
  enum Kind {
    TEXT,
    NUMBER,
    TRUTH,
    NOTHING
  }

  /** Keys with their values, in the order of the text. */
  record Tree(TextPlace place, Map<String, Member> members) implements Node {
    /** Returns what stands under a key. */
    public Optional<Node> get(String key) {
      return Optional.ofNullable(members.get(key)).map(Member::value);
    }

    /** Returns where a key stands, or where it is missing. */
    public TextPlace placeOf(String key) {
      return Optional.ofNullable(members.get(key)).map(Member::key).orElseGet(() -> place.key(key));
    }

    @Override
    public String shown() {
      return "keys and values";
    }
  }

  /**
   * A value with the place of its key.
   *
   * @param key where the key stands
   * @param value the value
   */
  record Member(TextPlace key, Node value) {}

  /** A list. */
  record Series(TextPlace place, List<Node> items) implements Node {
    @Override
    public String shown() {
      return items.isEmpty() ? "an empty list" : "a list";
    }
  }

  /** A single value; a number keeps the digits of the text. */
  record Leaf(TextPlace place, Kind kind, String text) implements Node {
    private static final int LONGEST_SHOWN = 60;

    @Override
    public String shown() {
      return switch (kind) {
        case TEXT -> '"' + brief() + '"';
        case NOTHING -> "nothing";
        case NUMBER, TRUTH -> brief();
      };
    }

    private String brief() {
      return text.length() <= LONGEST_SHOWN ? text : text.substring(0, LONGEST_SHOWN) + "…";
    }
  }

  /** Returns where it stands. */
  TextPlace place();

  /** Returns it in a message's words. */
  String shown();

  /** Returns the text when this is a single value of that kind. */
  default Optional<String> as(Kind kind) {
    return this instanceof Leaf leaf && leaf.kind() == kind
        ? Optional.of(leaf.text())
        : Optional.empty();
  }
}
