package org.isopter.profiles.artefact;

import ca.uhn.fhir.context.FhirContext;
import org.hl7.fhir.r4.model.Resource;

/** How an artefact is named and written as a file. */
public final class ArtefactText {

  private ArtefactText() {}

  /** Returns the name of its file, for instance {@code ValueSet-eye-site.json}. */
  public static String fileName(Resource artefact) {
    return artefact.fhirType() + "-" + artefact.getIdElement().getIdPart() + ".json";
  }

  /** Returns it as JSON over many lines, the same every time. */
  public static String json(Resource artefact) {
    return FhirContext.forR4Cached()
            .newJsonParser()
            .setPrettyPrint(true)
            .encodeResourceToString(artefact)
        + "\n";
  }
}
