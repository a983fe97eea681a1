package org.isopter.task.input;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.isopter.mapper.io.Inflated;

/**
 * A file or a stream to be read.
 *
 * @param name what messages call it
 * @param form how it is written down
 * @param inside where it lies below the folder that was named; its own name otherwise
 * @param file the file itself; empty for a stream
 * @param opener opens it
 */
public record InputSource(
    String name, InputForm form, Path inside, Optional<Path> file, Opener opener) {

  /** Makes a source that is a stream. */
  public InputSource(String name, InputForm form, Path inside, Opener opener) {
    this(name, form, inside, Optional.empty(), opener);
  }

  /** Makes a source of a file, compressed or not. */
  public static InputSource of(String name, InputForm form, Path inside, Path file) {
    Opener plain = () -> Files.newInputStream(file);
    Opener opener = InputForm.isCompressed(name) ? () -> Inflated.of(plain.open()) : plain;
    return new InputSource(name, form, inside, Optional.of(file), opener);
  }

  /** Opens a source. */
  @FunctionalInterface
  public interface Opener {
    InputStream open() throws IOException;
  }

  /** Says whether it may hold more than one document. */
  public boolean mayHoldSeveral() {
    return form == InputForm.NDJSON;
  }
}
