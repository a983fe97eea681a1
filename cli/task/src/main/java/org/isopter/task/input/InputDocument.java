package org.isopter.task.input;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.Arrays;
import org.isopter.mapper.io.Lines;
import org.isopter.task.report.Position;

/**
 * One document: a whole source, or one line of it.
 *
 * @param source where it comes from
 * @param line the line, from 1; 0 for a whole source
 * @param bytes the document
 */
@SuppressWarnings("ArrayRecordComponent") // Handed on once, never compared.
public record InputDocument(InputSource source, int line, byte[] bytes) {

  /** Returns how it is written down: a line of NDJSON is JSON. */
  public InputForm form() {
    return line > 0 ? InputForm.JSON : source.form();
  }

  /** Returns where it stands, for a message: the file, with the line where there are several. */
  public Position position() {
    return new Position(source.name(), line, 0);
  }

  /** Returns the document as text in UTF-8. */
  public String text() {
    return new String(bytes, UTF_8);
  }

  /** Says whether nothing was written; zero bytes are what a failing disk leaves. */
  public boolean isBlank() {
    return Lines.isBlank(bytes, 0, bytes.length);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof InputDocument that
        && source.equals(that.source)
        && line == that.line
        && Arrays.equals(bytes, that.bytes);
  }

  @Override
  public int hashCode() {
    return source.hashCode() + line;
  }
}
