package org.isopter.task.output;

import java.io.IOException;
import java.nio.file.Path;
import org.isopter.mapper.io.AtomicFile;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.profiles.FhirPackage;

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
    try (AtomicFile written = AtomicFile.at(file)) {
      FhirPackage.standard().writeTo(written);
      written.commit();
      return file;
    } catch (IOException failed) {
      throw new UnwritableException(file.toString(), failed);
    }
  }
}
