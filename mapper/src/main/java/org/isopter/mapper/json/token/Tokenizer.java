package org.isopter.mapper.json.token;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.Arrays;
import java.util.Optional;

/**
 * Cuts a JSON object in UTF-8 into tokens. It takes only what is plainly in order and leaves the
 * rest to a parser that can say what is wrong with it: everything that it takes, a strict parser
 * takes too, and as the same values.
 */
final class Tokenizer {

  private static final int DEPTH = 100;
  private static final int NUMBER = 1000;
  private static final int STRING = 1_000_000;
  private static final int OTHERS = 32;

  /** Ends the cutting where something is not plainly in order. */
  private static final class Odd extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private Odd() {
      super("not plainly in order", null, false, false);
    }
  }

  private final byte[] json;
  private final boolean checked;
  private final MemberNames names = new MemberNames();
  private int[] cells;
  private int count;
  private int at;
  private int depth;

  private Tokenizer(byte[] json, boolean checked) {
    this.json = json;
    this.checked = checked;
    this.cells = new int[(json.length / 16 + 16) * JsonTokens.WIDTH];
  }

  /** Returns the tokens; empty where the text is no object, or not plainly in order. */
  static Optional<JsonTokens> cut(byte[] json) {
    try {
      return Optional.of(new Tokenizer(json, false).whole());
    } catch (Odd odd) {
      return Optional.empty();
    }
  }

  /** Returns the tokens of an object that a parser has looked at before. */
  static JsonTokens checked(byte[] json) {
    return new Tokenizer(json, true).whole();
  }

  private JsonTokens whole() {
    if (skip() != '{') {
      throw new Odd();
    }
    value(0);
    if (skip() != 0 || at < json.length) {
      throw new Odd();
    }
    return new JsonTokens(json, cells, names);
  }

  /** Returns the next byte that is not blank, and stays there; 0 at the end. */
  private int skip() {
    while (at < json.length) {
      int next = json[at];
      if (next != ' ' && next != '\n' && next != '\r' && next != '\t') {
        return next;
      }
      at++;
    }
    return 0;
  }

  private void value(int name) {
    switch (skip()) {
      case '"' -> string(name);
      case '{' -> object(name);
      case '[' -> list(name);
      case 't' -> word(name, JsonTokens.TRUE, "true");
      case 'f' -> word(name, JsonTokens.FALSE, "false");
      case 'n' -> word(name, JsonTokens.NULL, "null");
      default -> number(name);
    }
  }

  private void object(int name) {
    int token = open(name, JsonTokens.OBJECT);
    long low = 0;
    long high = 0;
    int others = 0;
    if (skip() != '}') {
      do {
        int member = name();
        if (member >= MemberNames.COMMON) {
          other(token, member, ++others);
        } else if (member < Long.SIZE) {
          low = with(low, member);
        } else {
          high = with(high, member - Long.SIZE);
        }
        value(member);
      } while (goesOn('}'));
    }
    close(token);
  }

  /** Of two members of one name, one would be lost. */
  private static long with(long seen, int member) {
    if (((seen >>> member) & 1) != 0) {
      throw new Odd();
    }
    return seen | (1L << member);
  }

  private void other(int object, int name, int others) {
    if (checked) {
      return;
    }
    for (int i = object + 1; i < count; i = cells[i * JsonTokens.WIDTH + JsonTokens.NEXT]) {
      if ((cells[i * JsonTokens.WIDTH] >> JsonTokens.KIND_BITS) == name) {
        throw new Odd();
      }
    }
    if (others > OTHERS) {
      throw new Odd();
    }
  }

  private void list(int name) {
    int token = open(name, JsonTokens.LIST);
    if (skip() != ']') {
      do {
        value(0);
      } while (goesOn(']'));
    }
    close(token);
  }

  private int open(int name, int kind) {
    if (++depth > DEPTH && !checked) {
      throw new Odd();
    }
    int token = add(name, kind, at);
    at++;
    return token;
  }

  private void close(int token) {
    at++;
    depth--;
    end(token, at);
  }

  /** Says whether there is another member or item, and goes there. */
  private boolean goesOn(char end) {
    int next = skip();
    if (next == ',') {
      at++;
      skip();
      return true;
    }
    if (next != end) {
      throw new Odd();
    }
    return false;
  }

  private int name() {
    if (at >= json.length || json[at] != '"') {
      throw new Odd();
    }
    int from = at + 1;
    int to = EightBytes.plain(json, from);
    int number = -1;
    if (to < json.length && json[to] == '"') {
      number = MemberNames.common(json, from, to, EightBytes.start(json, from, to));
    }
    at = to + 1;
    if (number < 0) {
      at = from;
      boolean escaped = quoted();
      number = names.add(JsonTokens.decoded(json, from, at - 1, escaped));
    }
    if (skip() != ':') {
      throw new Odd();
    }
    at++;
    return number;
  }

  private void string(int name) {
    int from = at + 1;
    int token = add(name, JsonTokens.STRING, from);
    at = EightBytes.plain(json, from);
    if (at < json.length && json[at] == '"') {
      at++;
    } else {
      at = from;
      cells[token * JsonTokens.WIDTH] |=
          quoted() ? JsonTokens.ESCAPED | JsonTokens.NOT_PLAIN : JsonTokens.NOT_PLAIN;
    }
    if (!checked && at - from > STRING) {
      throw new Odd();
    }
    end(token, at - 1);
  }

  /** Goes behind the end of a string from its start; says whether anything in it is escaped. */
  private boolean quoted() {
    int from = at;
    boolean escaped = false;
    boolean ascii = true;
    while (true) {
      at = EightBytes.plain(json, at);
      int next = at < json.length ? json[at] : 0;
      if (next == '"') {
        break;
      } else if (next == '\\') {
        escaped = true;
        escape();
      } else if (next < 0) {
        ascii = false;
        at++;
      } else {
        throw new Odd();
      }
    }
    if (!(checked || ascii || isUtf8(from))) {
      throw new Odd();
    }
    at++;
    return escaped;
  }

  private boolean isUtf8(int from) {
    return new String(json, from, at - from, UTF_8).indexOf('\uFFFD') < 0;
  }

  private void escape() {
    int escaped = at + 1 < json.length ? json[at + 1] : 0;
    int hexadecimal = escaped == 'u' ? 4 : 0;
    if (escaped == 0 || "\"\\/bfnrtu".indexOf(escaped) < 0) {
      throw new Odd();
    }
    at += 2;
    for (int i = 0; i < hexadecimal; i++, at++) {
      if (at >= json.length || json[at] < 0 || Character.digit(json[at], 16) < 0) {
        throw new Odd();
      }
    }
  }

  private void word(int name, int kind, String word) {
    int token = add(name, kind, at);
    int to = at + word.length();
    if (to > json.length || !word.equals(JsonTokens.decoded(json, at, to, false))) {
      throw new Odd();
    }
    at = to;
    end(token, to);
  }

  private void number(int name) {
    int token = add(name, JsonTokens.NUMBER, at);
    int from = at;
    if (at < json.length && json[at] == '-') {
      at++;
    }
    if (at < json.length && json[at] == '0') {
      at++;
    } else {
      digits();
    }
    if (at < json.length && json[at] == '.') {
      at++;
      digits();
    }
    if (at < json.length && (json[at] | 0x20) == 'e') {
      at++;
      if (at < json.length && (json[at] == '+' || json[at] == '-')) {
        at++;
      }
      digits();
    }
    if (!checked && at - from > NUMBER) {
      throw new Odd();
    }
    end(token, at);
  }

  private void digits() {
    int from = at;
    while (at < json.length && json[at] >= '0' && json[at] <= '9') {
      at++;
    }
    if (at == from) {
      throw new Odd();
    }
  }

  private int add(int name, int kind, int start) {
    int cell = count * JsonTokens.WIDTH;
    if (cell == cells.length) {
      cells = Arrays.copyOf(cells, 2 * cell);
    }
    cells[cell] = (name << JsonTokens.KIND_BITS) | kind;
    cells[cell + JsonTokens.START] = start;
    return count++;
  }

  private void end(int token, int to) {
    int cell = token * JsonTokens.WIDTH;
    cells[cell + JsonTokens.END] = to;
    cells[cell + JsonTokens.NEXT] = count;
  }
}
