package org.isopter.task.report;

/**
 * A place in a file, as compilers print it.
 *
 * @param file the name of the file
 * @param line the line, from 1; 0 for the whole file
 * @param column the column, from 1; 0 for the whole line
 */
public record Position(String file, int line, int column) {

  @Override
  public String toString() {
    StringBuilder text = new StringBuilder(file);
    if (line > 0) {
      text.append(':').append(line);
    }
    if (column > 0) {
      text.append(':').append(column);
    }
    return text.toString();
  }
}
