package org.isopter.task.io;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Paths by which two names of one file are seen to be one. */
public final class RealPath {

  private RealPath() {}

  /** Returns a path without links, as far as it is there. */
  public static Path of(Path path) {
    Path whole = path.toAbsolutePath().normalize();
    try {
      Path above = whole.getParent();
      return Files.exists(whole) || above == null
          ? whole.toRealPath()
          : of(above).resolve(String.valueOf(whole.getFileName()));
    } catch (IOException gone) {
      return whole;
    }
  }
}
