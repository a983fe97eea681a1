package org.isopter.mapper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ca.uhn.fhir.context.FhirContext;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import org.hl7.fhir.convertors.factory.VersionConvertorFactory_40_50;
import org.hl7.fhir.r4.model.Observation;
import org.junit.jupiter.api.Test;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** The libraries for the formats work beside one another. */
class FormatsTest {

  @Test
  void yamlAndJsonSchemaShareOneJackson() {
    assertEquals(1, new YAMLMapper().readTree("a: 1").get("a").intValue());
    var schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(
                """
                {"type": "object", "required": ["a"]}
                """);
    assertTrue(schema.validate("{\"a\": 1}", InputFormat.JSON).isEmpty());
    assertEquals(1, schema.validate("b: 1", InputFormat.YAML).size());
  }

  @Test
  void anR4ResourceIsWrittenAndConverted() {
    Observation observation = new Observation();
    observation.setStatus(Observation.ObservationStatus.FINAL);
    assertTrue(
        FhirContext.forR4Cached()
            .newJsonParser()
            .encodeResourceToString(observation)
            .contains("\"final\""));
    var r5 =
        (org.hl7.fhir.r5.model.Observation)
            VersionConvertorFactory_40_50.convertResource(observation);
    assertEquals("final", r5.getStatus().toCode());
  }
}
