package org.isopter.mapper.record.tree;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/** Reads JSON text (RFC 8259) into nodes that know where they stand, without a library. */
public final class PlainTree {

  private static final char END = '\uffff';
  private static final String WANTED = "well-formed JSON";

  private final String text;
  private final Complaints complaints;
  private int at;
  private int line = 1;
  private int lineStart;

  private PlainTree(String text, Complaints complaints) {
    this.text = text;
    this.complaints = complaints;
  }

  /**
   * Returns the tree.
   *
   * @throws FaultException when the text is no JSON at all, or nests too deep
   */
  public static Node read(String text, Complaints complaints) {
    PlainTree tree = new PlainTree(text, complaints);
    tree.space();
    Node whole = tree.node(TextPlace.root(tree.line, tree.column()), 0);
    tree.space();
    if (tree.at < text.length()) {
      throw tree.refused("something behind the end of the record");
    }
    return whole;
  }

  private int column() {
    return at - lineStart + 1;
  }

  private char next() {
    return at < text.length() ? text.charAt(at) : END;
  }

  private FaultException refused(String seen) {
    return new FaultException(Fault.of("line " + line + ", column " + column(), seen, WANTED));
  }

  private FaultException unexpected() {
    return refused(at < text.length() ? "\"" + next() + "\"" : "the end of the text");
  }

  private void space() {
    while (next() == ' ' || next() == '\t' || next() == '\n' || next() == '\r') {
      at++;
      if (text.charAt(at - 1) == '\n') {
        line++;
        lineStart = at;
      }
    }
  }

  private void take(char wanted) {
    if (next() != wanted || at >= text.length()) {
      throw unexpected();
    }
    at++;
  }

  /** Says whether another member or item comes before the closing bracket, and goes to it. */
  private boolean another(char close, boolean isFirst) {
    space();
    if (next() == close) {
      at++;
      return false;
    }
    if (!isFirst) {
      take(',');
      space();
    }
    return true;
  }

  private Node node(TextPlace place, int depth) {
    Limits.depth(place, depth);
    return switch (next()) {
      case '{' -> tree(place, depth);
      case '[' -> series(place, depth);
      case '"' -> new Node.Leaf(place, Node.Kind.TEXT, quoted());
      case 't' -> word(place, "true", Node.Kind.TRUTH);
      case 'f' -> word(place, "false", Node.Kind.TRUTH);
      case 'n' -> word(place, "null", Node.Kind.NOTHING);
      default -> number(place);
    };
  }

  private Node tree(TextPlace place, int depth) {
    Map<String, Node.Member> members = new LinkedHashMap<>();
    take('{');
    while (another('}', members.isEmpty())) {
      int keyLine = line;
      int keyColumn = column();
      String name = quoted();
      TextPlace key = place.key(name, keyLine, keyColumn);
      space();
      take(':');
      space();
      Node value = node(place.key(name, line, column()), depth + 1);
      if (members.putIfAbsent(name, new Node.Member(key, value)) != null) {
        Limits.duplicate(key, complaints);
      }
    }
    return new Node.Tree(place, members);
  }

  private Node series(TextPlace place, int depth) {
    List<Node> items = new ArrayList<>();
    take('[');
    while (another(']', items.isEmpty())) {
      items.add(node(place.item(items.size(), line, column()), depth + 1));
    }
    return new Node.Series(place, items);
  }

  private Node word(TextPlace place, String word, Node.Kind kind) {
    if (!text.startsWith(word, at)) {
      throw unexpected();
    }
    at += word.length();
    return new Node.Leaf(place, kind, word);
  }

  /** Takes a number, whose digits are kept as they stand. */
  private Node number(TextPlace place) {
    int start = at;
    skip('-');
    if (!skip('0')) {
      digits();
    }
    if (skip('.')) {
      digits();
    }
    if (skip('e') || skip('E')) {
      if (!skip('+')) {
        skip('-');
      }
      digits();
    }
    return new Node.Leaf(place, Node.Kind.NUMBER, text.substring(start, at));
  }

  private boolean skip(char one) {
    boolean here = next() == one;
    at += here ? 1 : 0;
    return here;
  }

  private void digits() {
    int start = at;
    while (next() >= '0' && next() <= '9') {
      at++;
    }
    if (at == start) {
      throw unexpected();
    }
  }

  private String quoted() {
    StringBuilder words = new StringBuilder();
    take('"');
    while (next() != '"') {
      if (at >= text.length() || next() < ' ') {
        throw unexpected();
      }
      words.append(next() == '\\' ? escaped() : text.charAt(at++));
    }
    at++;
    return words.toString();
  }

  private char escaped() {
    at++;
    char kind = next();
    int known = "\"\\/bfnrtu".indexOf(kind);
    if (known < 0) {
      throw unexpected();
    }
    at++;
    return kind == 'u' ? unit() : "\"\\/\b\f\n\r\t".charAt(known);
  }

  private char unit() {
    int unit = 0;
    for (int i = 0; i < 4; i++) {
      int digit = next() < 128 ? Character.digit(next(), 16) : -1;
      if (digit < 0) {
        throw unexpected();
      }
      unit = unit * 16 + digit;
      at++;
    }
    return (char) unit;
  }
}
