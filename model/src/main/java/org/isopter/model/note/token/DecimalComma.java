package org.isopter.model.note.token;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Reads 0,8 and -1,25 as one number in a note in a language that writes it so. Any other comma
 * between digits may stand between two numbers and is left alone.
 */
public final class DecimalComma {

  /** What stands before the power of a lens. */
  private static final Set<String> BEFORE = Set.of("-", "+", "add");

  private DecimalComma() {}

  /** Returns the tokens with each number that is written with a comma as one of them. */
  public static List<Token> read(List<Token> tokens) {
    List<Token> out = new ArrayList<>();
    for (int i = 0; i < tokens.size(); i++) {
      Token token = tokens.get(i);
      boolean signed = i > 0 && BEFORE.contains(tokens.get(i - 1).text());
      boolean decimal =
          token.text().matches("[01],\\d{1,2}")
              || (signed && token.text().matches("\\d{1,2},\\d{1,2}"));
      out.add(decimal ? token.as(Token.Kind.NUMBER, token.text().replace(',', '.')) : token);
    }
    return List.copyOf(out);
  }
}
