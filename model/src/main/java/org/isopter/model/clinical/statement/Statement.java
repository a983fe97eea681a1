package org.isopter.model.clinical.statement;

import java.util.List;
import java.util.regex.Pattern;
import org.isopter.model.finding.Citation;

/**
 * One derived statement: what is said, because of which facts, how surely, and after which source.
 *
 * @param id the stable name of the kind of statement, dotted and in lower case, for instance {@code
 *     acuity.equivalents}
 * @param text what is said, in whole sentences
 * @param because the facts used, at least one, as they were recorded
 * @param certainty how sure it is
 * @param source where the rule, the number or the table comes from
 */
public record Statement(
    String id, String text, List<String> because, Certainty certainty, Citation source) {

  private static final Pattern NAME = Pattern.compile("[a-z0-9-]+(\\.[a-z0-9-]+)+");

  /**
   * Makes a statement.
   *
   * @throws IllegalArgumentException when it has no name, no text or no facts to stand on
   */
  public Statement {
    because = List.copyOf(because);
    if (!NAME.matcher(id).matches()) {
      throw new IllegalArgumentException("\"" + id + "\" is no dotted name of a statement");
    }
    if (text.isBlank() || because.isEmpty()) {
      throw new IllegalArgumentException(id + " says nothing, or stands on nothing");
    }
  }
}
