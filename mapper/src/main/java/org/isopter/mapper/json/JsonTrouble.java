package org.isopter.mapper.json;

import java.util.regex.Pattern;
import org.isopter.model.value.Fault;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.exc.StreamConstraintsException;

/** Says in our words why a text could not be read as JSON. */
public final class JsonTrouble {

  /** What a parser says of itself, which helps nobody who wrote the text. */
  private static final Pattern OF_ITSELF =
      Pattern.compile(" \\(start marker.*|, from `StreamReadConstraints[^`]*`", Pattern.DOTALL);

  /** A word that is no JSON may be the name of a person. */
  private static final Pattern WORD = Pattern.compile("token '[^']*'");

  private JsonTrouble() {}

  /**
   * Returns the fault; its path is the line and the column.
   *
   * @param ifBeyond what to do where the text asks for more than the limits allow
   */
  public static Fault fault(JacksonException trouble, String ifBeyond) {
    boolean beyond = trouble instanceof StreamConstraintsException;
    String said = OF_ITSELF.matcher(String.valueOf(trouble.getOriginalMessage())).replaceAll("");
    String seen = WORD.matcher(said).replaceFirst("a word");
    return new Fault(
        place(trouble.getLocation()),
        seen,
        beyond ? "a document within the limits" : "well-formed JSON",
        beyond ? ifBeyond : "correct the file where it says, or send it again");
  }

  /** Returns a place in words; empty where none is known. */
  public static String place(@Nullable TokenStreamLocation at) {
    return at == null ? "" : "line " + at.getLineNr() + ", column " + at.getColumnNr();
  }
}
