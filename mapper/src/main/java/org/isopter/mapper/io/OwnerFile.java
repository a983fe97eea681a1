package org.isopter.mapper.io;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;

/** A file that its owner alone can read, where the file system has permissions. */
public final class OwnerFile {

  private OwnerFile() {}

  /**
   * Makes an empty file.
   *
   * @throws IOException when it cannot be made, or is there already
   */
  public static void create(Path file) throws IOException {
    if (FileSystems.getDefault().supportedFileAttributeViews().contains("posix")) {
      Files.createFile(
          file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
    } else {
      Files.createFile(file);
    }
  }
}
