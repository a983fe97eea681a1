package org.isopter.mapper.foreign.run;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.model.value.Fault;

/**
 * Where a document came from.
 *
 * @param name the file, or what a message calls the stream
 * @param line the line, from 1; 0 for a whole file
 * @param folder what lies beside it has the same; empty for a stream
 */
public record Origin(String name, long line, String folder) {

  private static final Pattern PLACE = Pattern.compile("line (\\d+), column (\\d+)");

  /** Returns a line of this file. */
  Origin line(long number) {
    return new Origin(name, number, folder);
  }

  /** Returns {@code file}, or {@code file:line}. */
  @Override
  public String toString() {
    return line == 0 ? name : name + ":" + line;
  }

  /**
   * Returns a fault on one line with its place in the file. A document on a line of its own has one
   * line: that of the file is the one that counts.
   */
  String tell(Fault fault) {
    Matcher place = PLACE.matcher(fault.path());
    if (!place.matches()) {
      return this + ": " + fault;
    }
    String row = line == 0 ? place.group(1) : Long.toString(line);
    return name + ":" + row + ":" + place.group(2) + ": " + fault.at("");
  }
}
