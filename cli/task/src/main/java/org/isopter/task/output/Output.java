package org.isopter.task.output;

import java.io.OutputStream;
import java.util.Optional;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.task.input.InputDocument;
import org.isopter.task.io.Utf8;
import org.isopter.task.report.Issue;

/** Where a command puts what it made of each document. */
public interface Output extends AutoCloseable {

  /**
   * Puts the text made of a document.
   *
   * @return why it was not put, when it was not
   * @throws UnwritableException when it cannot be written
   */
  Optional<Issue> put(InputDocument item, String text);

  /** Ends the output: from here on it is complete. */
  void commit();

  @Override
  void close();

  /** Returns an output to a stream that stays open. */
  static Output to(OutputStream stream) {
    return new Output() {
      @Override
      public Optional<Issue> put(InputDocument item, String text) {
        Utf8.write(stream, "standard output", text);
        return Optional.empty();
      }

      @Override
      public void put(String text) {
        Utf8.write(stream, "standard output", text);
      }

      @Override
      public void commit() {}

      @Override
      public void close() {}
    };
  }

  /** Puts a text that came of no single document. */
  void put(String text);
}
