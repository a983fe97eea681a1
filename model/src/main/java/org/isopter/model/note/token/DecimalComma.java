package org.isopter.model.note.token;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Reads 0,8 and -1,25 as one number in a note in a language that writes it so, 0,8 before the name
 * of a notation, and -1,25 as the power of a lens. Any other comma between digits may stand between
 * two numbers and is left alone.
 */
public final class DecimalComma {

  /** What stands before the power of a lens. */
  private static final Set<String> BEFORE = Set.of("-", "+", "add");

  /** The names of notations in which an acuity has decimals. */
  private static final Set<String> BEHIND = Set.of("decimal", "logmar", "log");

  /** The power of a lens, which is written so in quarters of a dioptre. */
  private static final String QUARTERS = "\\d{1,2},(00|25|50|75)";

  private DecimalComma() {}

  /**
   * Returns the tokens with each number that is written with a comma as one of them.
   *
   * @param usual whether the note is in a language that writes it so
   */
  public static List<Token> read(List<Token> tokens, boolean usual) {
    List<Token> out = new ArrayList<>();
    for (int i = 0; i < tokens.size(); i++) {
      Token token = tokens.get(i);
      boolean signed = i > 0 && BEFORE.contains(tokens.get(i - 1).text());
      boolean named = usual || (i + 1 < tokens.size() && BEHIND.contains(tokens.get(i + 1).text()));
      boolean decimal =
          (named && token.text().matches("[01],\\d{1,2}"))
              || (usual && signed && token.text().matches("\\d{1,2},\\d{1,2}"))
              || (signed && token.text().matches(QUARTERS));
      out.add(decimal ? token.as(Token.Kind.NUMBER, token.text().replace(',', '.')) : token);
    }
    return List.copyOf(out);
  }
}
