package org.isopter.profiles.artefact;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The release that the artefacts belong to. */
public final class Release {

  /** The name under which the FHIR package is installed. */
  public static final String PACKAGE = "org.isopter.fhir";

  /** The version of FHIR that all is written for. */
  public static final String FHIR = "4.0.1";

  /** The version of the package and of everything in it: that of the build. */
  public static final String VERSION = read();

  private Release() {}

  private static String read() {
    Properties properties = new Properties();
    try (InputStream in = Release.class.getResourceAsStream("release.properties")) {
      properties.load(in);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
    return properties.getProperty("version");
  }
}
