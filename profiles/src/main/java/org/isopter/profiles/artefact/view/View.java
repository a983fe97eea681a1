package org.isopter.profiles.artefact.view;

import java.util.List;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Canonical;
import org.isopter.profiles.artefact.Metadata;
import org.isopter.profiles.artefact.ProfileRelease;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * A ViewDefinition of SQL on FHIR: how the observations of one finding become rows of a table.
 *
 * <p>It is shareable and tabular in the sense of that standard: it has an address, a name and the
 * FHIR version, and each of its columns has a type and at most one plain value.
 *
 * @param id the id of the finding
 * @param url its canonical address
 * @param definition the resource
 */
public record View(String id, String url, ObjectNode definition) {

  private static final JsonMapper JSON =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  /** The type of the resource; FHIR R4 itself has no such type. */
  public static final String TYPE = "ViewDefinition";

  /** Returns the views of a catalogue, one for each finding. */
  public static List<View> of(Catalogue catalogue) {
    return catalogue.all().stream().map(View::of).toList();
  }

  /** Returns the name of its file. */
  public String fileName() {
    return TYPE + "-" + id + ".json";
  }

  /** Returns it as JSON over many lines, the same every time. */
  public String json() {
    return JSON.writeValueAsString(definition).replace("\r\n", "\n") + "\n";
  }

  private static View of(Finding<?> finding) {
    ObjectNode view = head(finding);
    view.put("resource", "Observation");
    view.putArray("fhirVersion").add(ProfileRelease.FHIR);
    ArrayNode columns = view.putArray("select").addObject().putArray("column");
    FindingView.columns(finding).forEach(column -> add(columns, column));
    view.putArray("where").addObject().put("path", FindingView.where(finding));
    return new View(finding.id(), Canonical.view(finding.id()), view);
  }

  /** Returns what every artefact says of itself. */
  private static ObjectNode head(Finding<?> finding) {
    ObjectNode view = JSON.createObjectNode();
    view.put("resourceType", TYPE);
    view.put("id", finding.id());
    view.put("url", Canonical.view(finding.id()));
    view.put("version", ProfileRelease.VERSION);
    // The name of the table, for engines that make one.
    view.put("name", finding.id().replace('-', '_'));
    view.put("title", finding.title());
    view.put("status", "active");
    view.put("experimental", false);
    view.put("publisher", "Isopter");
    view.put("description", finding.title() + ": a row for each fact, with the codes as recorded.");
    String notices = Metadata.notices(finding.codes().all());
    if (!notices.isEmpty()) {
      view.put("copyright", notices);
    }
    return view;
  }

  private static void add(ArrayNode columns, ViewColumn column) {
    columns
        .addObject()
        .put("name", column.name())
        .put("path", column.path())
        .put("description", column.meaning())
        .put("type", column.type())
        .put("collection", false);
  }
}
