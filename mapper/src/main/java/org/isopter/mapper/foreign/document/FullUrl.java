package org.isopter.mapper.foreign.document;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The address of an entry (FHIR R4, Bundle, "Resolving references in Bundles"). */
public final class FullUrl {

  private static final Pattern ON_SERVER =
      Pattern.compile("(https?://[!-~]+)/[A-Z][A-Za-z]+/[^/]+");

  private FullUrl() {}

  /** Returns the root that relative references go on from, without a slash; where there is one. */
  public static Optional<String> server(String fullUrl) {
    Matcher parts = ON_SERVER.matcher(fullUrl);
    return parts.matches() ? Optional.of(parts.group(1)) : Optional.empty();
  }
}
