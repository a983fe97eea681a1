package org.isopter.profiles;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.finding.Finding;
import org.isopter.profiles.artefact.view.View;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/**
 * The views are what SQL on FHIR calls shareable and tabular. The rules are those of its models and
 * profiles: ViewDefinition, ShareableViewDefinition, TabularViewDefinition (2.1.0).
 */
class ViewTest {

  private static final List<View> VIEWS = View.of(Catalogue.standard());

  /** Its constraint sql-name. */
  private static final String NAME = "^[A-Za-z][A-Za-z0-9_]*$";

  /** Its constraint primitives-only, which leaves out date and uri. */
  private static final Set<String> PLAIN =
      Set.of(
          "base64Binary",
          "boolean",
          "canonical",
          "code",
          "dateTime",
          "decimal",
          "id",
          "instant",
          "integer",
          "integer64",
          "markdown",
          "oid",
          "string",
          "positiveInt",
          "time",
          "unsignedInt",
          "url",
          "uuid");

  @Test
  void everyFindingHasOne() {
    assertEquals(
        Catalogue.standard().all().stream().<String>map(Finding::id).toList(),
        VIEWS.stream().map(View::id).toList());
  }

  @Test
  void theyAreShareable() {
    Set<String> names = new TreeSet<>();
    for (View view : VIEWS) {
      JsonNode json = view.definition();
      assertEquals("https://w3id.org/isopter/fhir/ViewDefinition/" + view.id(), view.url());
      assertEquals(view.url(), json.path("url").asString());
      assertEquals("active", json.path("status").asString());
      assertEquals("Observation", json.path("resource").asString());
      assertEquals("4.0.1", json.path("fhirVersion").path(0).asString());
      String name = json.path("name").asString();
      assertTrue(name.matches(NAME), name);
      assertTrue(names.add(name), name);
    }
  }

  @Test
  void theyAreTabular() {
    for (View view : VIEWS) {
      Set<String> names = new TreeSet<>();
      JsonNode columns = view.definition().path("select").path(0).path("column");
      assertFalse(columns.isEmpty(), view.id());
      for (JsonNode column : columns) {
        String name = column.path("name").asString();
        assertTrue(name.matches(NAME), name);
        assertTrue(names.add(name), name);
        assertTrue(PLAIN.contains(column.path("type").asString()), column::toString);
        assertTrue(column.path("collection").isBoolean(), column::toString);
        assertFalse(column.path("collection").booleanValue(), column::toString);
      }
    }
  }
}
