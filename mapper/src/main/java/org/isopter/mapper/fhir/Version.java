package org.isopter.mapper.fhir;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Objects;
import java.util.Properties;

/** The version of this build, as provenance names it. */
public final class Version {

  /** The version, for instance {@code 0.1.0}. */
  public static final String TEXT = read();

  private Version() {}

  private static String read() {
    try (InputStream file = Version.class.getResourceAsStream("version.properties")) {
      Properties properties = new Properties();
      properties.load(Objects.requireNonNull(file));
      return properties.getProperty("version");
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
