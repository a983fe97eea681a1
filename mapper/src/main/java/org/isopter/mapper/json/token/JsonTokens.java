package org.isopter.mapper.json.token;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.Arrays;
import java.util.Optional;
import tools.jackson.core.io.JsonStringEncoder;

/**
 * A JSON object as it stands in its text: each value is a token, which is a number; its members or
 * items follow it. Texts are decoded when they are asked for. Reading takes: what was understood is
 * taken, so that what remains at the end is exactly what nobody understood.
 *
 * <p>Not for several threads at once.
 */
public final class JsonTokens {

  /** The token of the whole object. */
  public static final int ROOT = 0;

  /** No token. */
  public static final int NONE = -1;

  // What is known of a token: its kind, its name, where its text starts and ends, what follows it.
  static final int WIDTH = 4;
  static final int START = 1;
  static final int END = 2;
  static final int NEXT = 3;

  static final int OBJECT = 1;
  static final int LIST = 2;
  static final int STRING = 3;
  static final int NUMBER = 4;
  static final int TRUE = 5;
  static final int FALSE = 6;
  static final int NULL = 7;
  static final int NOT_PLAIN = 8;
  static final int ESCAPED = 16;
  static final int KIND_BITS = 6;
  private static final int KIND = 7;
  private static final int TAKEN = 32;

  private static final int SHOWN = 60;
  private static final JsonStringEncoder ESCAPES = JsonStringEncoder.getInstance();

  private final byte[] json;
  private final int[] cells;
  private final MemberNames names;

  JsonTokens(byte[] json, int[] cells, MemberNames names) {
    this.json = json;
    this.cells = cells;
    this.names = names;
  }

  /**
   * Returns the tokens of an object in UTF-8, which must not be changed while they are used; empty
   * where a parser has to look at it, for it is no object, not well-formed, or only unusual.
   */
  public static Optional<JsonTokens> of(byte[] json) {
    return Tokenizer.cut(json);
  }

  /** Returns the tokens of an object that a parser has read and written in UTF-8. */
  public static JsonTokens ofChecked(byte[] json) {
    return Tokenizer.checked(json);
  }

  /** Returns the member of that name that was not taken. */
  public int member(int object, String name) {
    return isObject(object) ? member(object, names.number(name), TAKEN) : NONE;
  }

  private int member(int object, int name, int mask) {
    int end = next(object);
    for (int i = object + 1; i < end; i = next(i)) {
      int head = cells[i * WIDTH];
      if ((head >> KIND_BITS) == name && (head & mask) == 0) {
        return i;
      }
    }
    return NONE;
  }

  /** Returns what comes after a token and all that is in it. */
  public int next(int token) {
    return cells[token * WIDTH + NEXT];
  }

  /** Says whether a value is an object. */
  public boolean isObject(int token) {
    return kind(token) == OBJECT;
  }

  /** Says whether a value is a list. */
  public boolean isList(int token) {
    return kind(token) == LIST;
  }

  /** Says whether a value is a string. */
  public boolean isString(int token) {
    return kind(token) == STRING;
  }

  /** Says whether a value is a number. */
  public boolean isNumber(int token) {
    return kind(token) == NUMBER;
  }

  /** Says whether a value is true or false. */
  public boolean isTruth(int token) {
    return kind(token) == TRUE || kind(token) == FALSE;
  }

  private int kind(int token) {
    return cells[token * WIDTH] & KIND;
  }

  /** Returns the text of a string, or the JSON of any other value. */
  public String text(int token) {
    int start = cells[token * WIDTH + START];
    int end = cells[token * WIDTH + END];
    int head = cells[token * WIDTH];
    return (head & NOT_PLAIN) == 0 && (head & KIND) > LIST
        ? new String(json, start, end - start, ISO_8859_1)
        : decoded(json, start, end, (head & ESCAPED) != 0);
  }

  /** Says whether two values are the same text. */
  public boolean isSame(int one, int other) {
    return kind(one) == kind(other)
        && Arrays.equals(
            json,
            cells[one * WIDTH + START],
            cells[one * WIDTH + END],
            json,
            cells[other * WIDTH + START],
            cells[other * WIDTH + END]);
  }

  /** Says whether a value that is no string is this JSON, byte for byte. */
  public boolean isJson(int token, byte[] wanted) {
    return Arrays.equals(
        json, cells[token * WIDTH + START], cells[token * WIDTH + END], wanted, 0, wanted.length);
  }

  /** Takes a value and all that is in it. */
  public void take(int token) {
    cells[token * WIDTH] |= TAKEN;
  }

  /** Returns the first leaf from a token on, and before another, that was not taken. */
  public int leaf(int from, int to) {
    int i = from;
    while (i < to) {
      int head = cells[i * WIDTH];
      if ((head & TAKEN) != 0) {
        i = next(i);
      } else if ((head & KIND) > LIST) {
        return i;
      } else {
        i++;
      }
    }
    return NONE;
  }

  /** Returns where a token stands, for instance {@code Bundle.entry[2].resource}. */
  public String path(int token) {
    int type = member(ROOT, names.number("resourceType"), 0);
    StringBuilder path =
        new StringBuilder(type != NONE && isString(type) ? text(type) : "resource");
    int holder = ROOT;
    while (holder != token) {
      int child = holder + 1;
      int index = 0;
      while (next(child) <= token) {
        child = next(child);
        index++;
      }
      if (isObject(holder)) {
        path.append('.').append(name(child));
      } else {
        path.append('[').append(index).append(']');
      }
      holder = child;
    }
    return path.toString();
  }

  /** Returns a value as JSON on one line, cut where it is long. */
  public String shown(int token) {
    StringBuilder text = new StringBuilder();
    show(token, text);
    return text.length() <= SHOWN ? text.toString() : text.substring(0, SHOWN - 3) + "...";
  }

  private void show(int token, StringBuilder text) {
    if (text.length() > SHOWN) {
      return;
    }
    if (isString(token)) {
      text.append('"');
      ESCAPES.quoteAsString(text(token), text);
      text.append('"');
    } else if (isObject(token) || isList(token)) {
      text.append(isObject(token) ? '{' : '[');
      for (int i = token + 1; i < next(token) && text.length() <= SHOWN; i = next(i)) {
        text.append(i == token + 1 ? "" : ",")
            .append(isObject(token) ? "\"" + name(i) + "\":" : "");
        show(i, text);
      }
      text.append(isObject(token) ? '}' : ']');
    } else {
      text.append(text(token));
    }
  }

  String name(int member) {
    return names.text(cells[member * WIDTH] >> KIND_BITS);
  }

  static String decoded(byte[] json, int from, int to, boolean escaped) {
    String text = new String(json, from, to - from, UTF_8);
    if (!escaped) {
      return text;
    }
    StringBuilder plain = new StringBuilder(text.length());
    int start = 0;
    for (int slash = text.indexOf('\\'); slash >= 0; slash = text.indexOf('\\', start)) {
      plain.append(text, start, slash);
      char kind = text.charAt(slash + 1);
      start = slash + (kind == 'u' ? 6 : 2);
      plain.append(kind == 'u' ? hexadecimal(text, slash + 2) : escape(kind));
    }
    return plain.append(text, start, text.length()).toString();
  }

  private static char hexadecimal(String text, int at) {
    return (char) Integer.parseInt(text, at, at + 4, 16);
  }

  private static char escape(char kind) {
    return switch (kind) {
      case 'b' -> '\b';
      case 'f' -> '\f';
      case 'n' -> '\n';
      case 'r' -> '\r';
      case 't' -> '\t';
      default -> kind;
    };
  }
}
