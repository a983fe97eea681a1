package org.isopter.mapper.io;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;

/** What its owner alone can read, where the file system has permissions. */
public final class OwnerFile {

  private static final Set<PosixFilePermission> OTHERS =
      Set.of(PosixFilePermission.GROUP_READ, PosixFilePermission.OTHERS_READ);

  private OwnerFile() {}

  /**
   * Makes an empty file.
   *
   * @throws IOException when it cannot be made, or is there already
   */
  public static void create(Path file) throws IOException {
    Files.createFile(file, only("rw-------"));
  }

  /**
   * Makes an empty folder, and those above it as they are usually made.
   *
   * @throws IOException when it cannot be made, or is there already
   */
  public static void createFolder(Path folder) throws IOException {
    Path above = folder.getParent();
    if (above != null && !Files.exists(above)) {
      Files.createDirectories(above);
    }
    Files.createDirectory(folder, only("rwx------"));
  }

  /**
   * Says whether others than the owner can read a file.
   *
   * @throws IOException when its permissions cannot be read
   */
  public static boolean isOpen(Path file) throws IOException {
    return hasPermissions()
        && Files.getPosixFilePermissions(file).stream().anyMatch(OTHERS::contains);
  }

  private static FileAttribute<?>[] only(String permissions) {
    return hasPermissions()
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(permissions))
        }
        : new FileAttribute<?>[0];
  }

  private static boolean hasPermissions() {
    return FileSystems.getDefault().supportedFileAttributeViews().contains("posix");
  }
}
