package org.isopter.mapper.view;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.List;
import java.util.Map;
import org.hl7.fhir.utilities.json.model.JsonObject;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.profiles.artefact.view.View;
import org.junit.jupiter.api.Test;

/** What an engine of SQL on FHIR, which knows nothing of this project, says of the views. */
class ViewDefinitionsTest {

  private final ViewEngine engine = new ViewEngine(Definitions.r4());

  @Test
  void itHasNothingAgainstThem() {
    for (View view : View.of(Catalogue.standard())) {
      assertEquals(List.of(), errors(ViewEngine.view(view.json())), view.id());
    }
  }

  @Test
  void itRefusesAViewThatNamesAnElementThatIsNotThere() {
    String json = View.of(Catalogue.standard()).get(0).json();
    JsonObject broken = ViewEngine.view(json.replace("bodySite.coding", "bodySide.coding"));
    assertNotEquals(List.of(), errors(broken));
  }

  @Test
  void aReferenceToAPersonIsAKey() {
    String view = View.of(Catalogue.standard()).get(0).json();
    JsonObject everything = ViewEngine.view(view);
    everything.remove("where");
    String observation =
        """
        {"resourceType": "Observation", "id": "o", "status": "final", "code": {"text": "x"},
         "subject": {"reference": "Patient/p-17"}}
        """;
    Map<String, String> row =
        engine.rows(everything, List.of(ViewEngine.resource(observation))).get(0);
    assertEquals("Patient/p-17", row.get("subject_key"));
    assertEquals("Observation/o", row.get("observation_key"));
  }

  private List<String> errors(JsonObject view) {
    return engine.complaints(view).stream().filter(said -> said.startsWith("ERROR")).toList();
  }
}
