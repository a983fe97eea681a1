package org.isopter.mapper.io;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedOutputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** A file that appears under its name only when it is complete. */
public final class AtomicFile extends FilterOutputStream {

  private final Path target;
  private final Path aside;

  private AtomicFile(Path target, Path aside, OutputStream out) {
    super(out);
    this.target = target;
    this.aside = aside;
  }

  /**
   * Starts a file beside its target; folders above it are made.
   *
   * @throws UnwritableException when that cannot be done
   */
  public static AtomicFile at(Path target) {
    return at(target, false);
  }

  /**
   * Starts a file that its owner alone can read, where the file system has permissions.
   *
   * @throws UnwritableException when that cannot be done
   */
  public static AtomicFile forOwner(Path target) {
    return at(target, true);
  }

  private static AtomicFile at(Path target, boolean forOwner) {
    try {
      Path real = Files.exists(target) ? target.toRealPath() : target.toAbsolutePath();
      Path aside = aside(real);
      if (forOwner && !aside.equals(real)) {
        OwnerFile.create(aside);
      }
      OutputStream out = new BufferedOutputStream(Files.newOutputStream(aside), 1 << 16);
      return new AtomicFile(real, aside, out);
    } catch (IOException failed) {
      throw new UnwritableException(target.toString(), failed);
    }
  }

  /**
   * Writes a whole file in UTF-8.
   *
   * @throws UnwritableException when that cannot be done; what was there before then stays
   */
  public static void write(Path target, String text) {
    try (AtomicFile file = at(target)) {
      file.write(text.getBytes(UTF_8));
      file.commit();
    } catch (IOException failed) {
      throw new UnwritableException(target.toString(), failed);
    }
  }

  private static Path aside(Path target) throws IOException {
    if (Files.exists(target) && !Files.isRegularFile(target)) {
      // A device or a pipe: to rename a file over it would do away with it.
      return target;
    }
    Path folder = target.getParent();
    if (folder != null) {
      Files.createDirectories(folder);
    }
    String unique = Long.toHexString(System.nanoTime());
    return Passing.add(target.resolveSibling("." + target.getFileName() + "." + unique + ".part"));
  }

  /**
   * Writes a text in UTF-8 and a line feed.
   *
   * @throws IOException when it cannot be written
   */
  public void line(String text) throws IOException {
    write(text.getBytes(UTF_8));
    write('\n');
  }

  @Override
  public void write(byte[] bytes, int from, int length) throws IOException {
    out.write(bytes, from, length);
  }

  /**
   * Gives the file its name.
   *
   * @throws UnwritableException when that cannot be done
   */
  public void commit() {
    try {
      super.close();
      if (!aside.equals(target)) {
        Passing.rename(aside, target);
      }
    } catch (IOException failed) {
      throw new UnwritableException(target.toString(), failed);
    }
  }

  /** Closes the file; what was not committed is gone. */
  @Override
  public void close() throws IOException {
    super.close();
    if (!aside.equals(target)) {
      Passing.delete(aside);
    }
  }
}
