package org.isopter.mapper.view;

import java.util.ArrayList;
import java.util.List;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.model.exam.Exam;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The observations of a bundle as a server stores them, each on its own. */
public final class Observations {

  private static final FhirWriter WRITER = FhirWriter.of(BundleKind.COLLECTION).withDerived();

  // A number must keep its digits: 1.50 is not 1.5.
  private static final JsonMapper JSON =
      JsonMapper.builder()
          .enable(tools.jackson.databind.DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .build();

  private Observations() {}

  /** Returns those of an examination in the order in which they are written: panel and all. */
  public static List<String> of(Exam exam) {
    List<String> observations = new ArrayList<>();
    for (JsonNode entry : JSON.readTree(WRITER.write(exam)).path("entry")) {
      JsonNode resource = entry.path("resource");
      if (resource.path("resourceType").asString().equals("Observation")) {
        observations.add(resource.toString());
      }
    }
    return observations;
  }
}
