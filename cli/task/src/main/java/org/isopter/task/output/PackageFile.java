package org.isopter.task.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.isopter.profiles.FhirPackage;
import org.isopter.task.io.UnwritableException;

/** Writes the FHIR package where the command line says. */
public final class PackageFile {

  private static final String NAME = "package.tgz";

  private PackageFile() {}

  /**
   * Writes the package and returns its file: the target itself when it ends in .tgz, otherwise the
   * one of that name in it.
   *
   * @throws UnwritableException when it cannot be written
   */
  public static Path write(Path target) {
    Path file = target.toString().endsWith(".tgz") ? target : target.resolve(NAME);
    try {
      Path folder = file.toAbsolutePath().getParent();
      if (folder != null) {
        Files.createDirectories(folder);
      }
      FhirPackage.standard().writeTo(file);
      return file;
    } catch (IOException failed) {
      throw new UnwritableException(file.toString(), failed);
    }
  }
}
