package org.isopter.mapper.exchange;

import java.io.IOException;
import java.io.OutputStream;

/** Where what is fetched goes: a JSON document on each line. */
public interface FetchedLines {

  /** Takes a resource, or a page of a history. */
  void line(byte[] json);

  /** Takes a bundle that says what was deleted. */
  void deleted(byte[] json);

  /** Takes an OperationOutcome about what could not be given. */
  void trouble(byte[] json);

  /**
   * Writes a document on one line: an end of a line can only stand between the parts of JSON, where
   * a blank says the same.
   *
   * @throws IOException when it cannot be written
   */
  static void write(byte[] json, OutputStream to) throws IOException {
    byte[] line = json.clone();
    for (int i = 0; i < line.length; i++) {
      if (line[i] == '\n' || line[i] == '\r') {
        line[i] = ' ';
      }
    }
    to.write(line);
    to.write('\n');
  }
}
