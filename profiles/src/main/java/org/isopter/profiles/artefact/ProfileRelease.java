package org.isopter.profiles.artefact;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The release that the artefacts belong to. */
public final class ProfileRelease {

  /** The name under which the FHIR package is installed. */
  public static final String PACKAGE = "org.isopter.fhir";

  /** The version of FHIR that all is written for. */
  public static final String FHIR = "4.0.1";

  private static final Properties PROPERTIES = read();

  /** The version of the package and of everything in it: that of the build. */
  public static final String VERSION = PROPERTIES.getProperty("version");

  /** The day on which the artefacts were last changed. */
  public static final String DATE = PROPERTIES.getProperty("date");

  private ProfileRelease() {}

  private static Properties read() {
    Properties properties = new Properties();
    try (InputStream in = ProfileRelease.class.getResourceAsStream("release.properties")) {
      properties.load(in);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
    return properties;
  }
}
