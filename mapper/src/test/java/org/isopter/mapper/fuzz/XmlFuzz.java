package org.isopter.mapper.fuzz;

import org.isopter.mapper.foreign.document.DocumentSources;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.json.Limits;

/** Any bytes as a FHIR document of any release, XML included: R4 JSON, or refused with a reason. */
public final class XmlFuzz {

  private static final DocumentSources SOURCES =
      new DocumentSources(Limits.USUAL, java.util.Optional.empty());

  private XmlFuzz() {}

  /** Tries one input. */
  public static void fuzzerTestOneInput(byte[] input) {
    for (Release release : Release.values()) {
      Refusals.check(SOURCES.read(input, release).faults());
    }
  }
}
