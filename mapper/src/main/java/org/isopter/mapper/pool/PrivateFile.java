package org.isopter.mapper.pool;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import org.isopter.mapper.io.Passing;

/**
 * A file outside of the pool that leads back to persons: its owner alone can read it. It appears
 * under its name when it is complete; a device or a pipe is written to as it stands.
 */
final class PrivateFile implements AutoCloseable {

  private final Path file;
  private final Path aside;
  private final BufferedWriter writer;

  private PrivateFile(Path file, Path aside) throws IOException {
    this.file = file;
    this.aside = aside;
    this.writer = Files.newBufferedWriter(aside, UTF_8);
  }

  static PrivateFile open(Path path) throws IOException {
    Path file = path.toAbsolutePath();
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      return new PrivateFile(file, file);
    }
    Files.createDirectories(file.resolveSibling(""));
    Path aside = file.resolveSibling("." + file.getFileName() + ".part");
    Files.deleteIfExists(aside);
    createForOwner(Passing.add(aside));
    return new PrivateFile(file, aside);
  }

  private static void createForOwner(Path aside) throws IOException {
    if (FileSystems.getDefault().supportedFileAttributeViews().contains("posix")) {
      Files.createFile(
          aside,
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
    }
  }

  void line(String text) throws IOException {
    writer.write(text);
    writer.write('\n');
  }

  /** Gives the closed file its name. */
  void commit() throws IOException {
    if (!aside.equals(file)) {
      Files.move(aside, file, StandardCopyOption.REPLACE_EXISTING);
      Passing.remove(aside);
    }
  }

  /** Takes away what was not finished. */
  void discard() throws IOException {
    if (!aside.equals(file)) {
      Passing.delete(aside);
    }
  }

  @Override
  public void close() throws IOException {
    writer.close();
  }
}
