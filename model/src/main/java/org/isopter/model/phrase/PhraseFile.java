package org.isopter.model.phrase;

import java.util.ArrayList;
import java.util.List;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * Reads a file of phrases: UTF-8 text of lines with five columns, a tab between them.
 *
 * <p>The columns are kind, meaning, language, phrases and source. Several phrases have {@code |}
 * between them. An empty line, and one that starts with {@code #}, says nothing.
 */
public final class PhraseFile {

  private static final int COLUMNS = 5;
  private static final int PHRASES = 3;
  private static final String WANTED =
      "kind, meaning, language, phrases and source, a tab between two";

  private PhraseFile() {}

  /** Returns the lines of a file, or a fault for each line that has no such form. */
  public static Result<List<PhraseLine>> read(String text) {
    List<PhraseLine> lines = new ArrayList<>();
    List<Fault> faults = new ArrayList<>();
    String[] all = text.split("\r?\n", -1);
    for (int i = 0; i < all.length; i++) {
      if (!all[i].isBlank() && !all[i].startsWith("#")) {
        add(all[i], i + 1, lines, faults);
      }
    }
    return faults.isEmpty() ? Result.ok(List.copyOf(lines)) : Result.refused(faults);
  }

  private static void add(String text, int line, List<PhraseLine> lines, List<Fault> faults) {
    String[] columns = text.split("\t", -1);
    boolean whole = columns.length == COLUMNS;
    for (String column : columns) {
      whole = whole && !column.isBlank();
    }
    whole = whole && !phrases(columns[PHRASES]).isEmpty();
    if (whole) {
      lines.add(
          new PhraseLine(
              line,
              columns[0].strip(),
              columns[1].strip(),
              columns[2].strip(),
              phrases(columns[PHRASES]),
              columns[4].strip()));
    } else {
      faults.add(Fault.of("line " + line, "\"" + text + "\"", WANTED));
    }
  }

  private static List<String> phrases(String column) {
    List<String> phrases = new ArrayList<>();
    for (String phrase : column.split("\\|", -1)) {
      if (!phrase.isBlank()) {
        phrases.add(phrase.strip());
      }
    }
    return phrases;
  }
}
