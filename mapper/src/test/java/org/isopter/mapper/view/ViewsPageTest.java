package org.isopter.mapper.view;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.hl7.fhir.r5.model.Base;
import org.hl7.fhir.utilities.json.model.JsonObject;
import org.isopter.mapper.check.RecordFiles;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.profiles.artefact.view.View;
import org.junit.jupiter.api.Test;

/** The page on views shows what a view says and what an engine makes of it. */
class ViewsPageTest {

  private static final View VIEW =
      View.of(Catalogue.standard()).stream()
          .filter(view -> view.id().equals("intraocular-pressure"))
          .findFirst()
          .orElseThrow();

  @Test
  void theRowsAreThoseOfTheEngine() throws IOException {
    ViewEngine engine = new ViewEngine(Definitions.r4());
    Path record = RecordFiles.in(RecordFiles.DEMO).get(0);
    List<Base> resources =
        Observations.of(RecordFiles.exam(record)).stream().map(ViewEngine::resource).toList();
    JsonObject view = ViewEngine.view(VIEW.json());
    shows(table(view, engine.rows(view, resources)));
  }

  @Test
  void thePathsAreThoseOfTheView() throws IOException {
    shows(VIEW.definition().path("where").path(0).path("path").asString());
    shows("\"path\" : \"value.ofType(Quantity).value\"");
    assertTrue(VIEW.json().contains("\"path\" : \"value.ofType(Quantity).value\""));
  }

  private static void shows(String text) throws IOException {
    String page = Files.readString(Path.of("../docs/views.md")).replace("\r\n", "\n");
    assertTrue(page.contains(text), () -> "docs/views.md does not show:\n" + text);
  }

  /** Turned on its side, for a page is not wide: a line for each column, a column for each row. */
  private static String table(JsonObject view, List<Map<String, String>> rows) {
    StringBuilder page = new StringBuilder("| column |");
    rows.forEach(row -> page.append(" row |"));
    page.append("\n|---|");
    rows.forEach(row -> page.append("---|"));
    Set<String> filled = new TreeSet<>();
    rows.forEach(row -> filled.addAll(row.keySet()));
    for (JsonObject column : view.getJsonObjects("select").get(0).getJsonObjects("column")) {
      String name = column.asString("name");
      if (filled.contains(name)) {
        page.append("\n| `").append(name).append("` |");
        rows.forEach(row -> page.append(' ').append(row.getOrDefault(name, "")).append(" |"));
      }
    }
    return page.append('\n').toString();
  }
}
