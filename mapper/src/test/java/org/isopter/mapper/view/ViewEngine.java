package org.isopter.mapper.view;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.hl7.fhir.r5.context.IWorkerContext;
import org.hl7.fhir.r5.fhirpath.FHIRPathEngine;
import org.hl7.fhir.r5.formats.JsonParser;
import org.hl7.fhir.r5.model.Base;
import org.hl7.fhir.r5.utils.sql.Provider;
import org.hl7.fhir.r5.utils.sql.Runner;
import org.hl7.fhir.r5.utils.sql.StorageJson;
import org.hl7.fhir.r5.utils.sql.Validator;
import org.hl7.fhir.r5.utils.sql.Validator.TrueFalseOrUnknown;
import org.hl7.fhir.utilities.json.model.JsonArray;
import org.hl7.fhir.utilities.json.model.JsonElement;
import org.hl7.fhir.utilities.json.model.JsonNull;
import org.hl7.fhir.utilities.json.model.JsonObject;
import org.hl7.fhir.utilities.json.model.JsonPrimitive;
import org.hl7.fhir.utilities.json.model.JsonProperty;

/** An engine of SQL on FHIR that others wrote; it checks paths by the types of one FHIR release. */
public final class ViewEngine {

  private final IWorkerContext release;

  /** Makes an engine for a release of FHIR. */
  public ViewEngine(IWorkerContext release) {
    this.release = release;
  }

  /** Returns a resource in the classes that the engine has: those of R5, whatever the release. */
  public static Base resource(String json) {
    try {
      return new JsonParser().parse(json);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /** Returns a view as this engine takes it: two properties of the standard are not known to it. */
  public static JsonObject view(String json) {
    try {
      JsonObject view = org.hl7.fhir.utilities.json.parser.JsonParser.parseObject(json);
      view.remove("id");
      view.remove("fhirVersion");
      return view;
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /** Returns what the engine says against a view, warnings too. */
  public List<String> complaints(JsonObject view) {
    Validator validator =
        new Validator(
            release,
            engine(),
            List.of(),
            TrueFalseOrUnknown.FALSE,
            TrueFalseOrUnknown.FALSE,
            TrueFalseOrUnknown.TRUE);
    validator.checkViewDefinition("view", view);
    return validator.getIssues().stream().map(issue -> issue.summary()).toList();
  }

  private FHIRPathEngine engine() {
    FHIRPathEngine paths = new FHIRPathEngine(release);
    paths.setHostServices(new Runner());
    return paths;
  }

  /**
   * Returns the rows of a view: the cells as text by the name of their column, without those that
   * are empty.
   */
  public List<Map<String, String>> rows(JsonObject view, List<Base> resources) {
    StorageJson storage = new StorageJson();
    Runner runner = new Runner();
    runner.setContext(release);
    runner.setStorage(storage);
    runner.setProvider(provider(resources));
    runner.execute(view);
    return rows(storage.getRows());
  }

  /** Returns rows in JSON as cells by name. */
  static List<Map<String, String>> rows(JsonArray array) {
    List<Map<String, String>> rows = new ArrayList<>();
    for (JsonElement row : array) {
      Map<String, String> cells = new TreeMap<>();
      for (JsonProperty cell : ((JsonObject) row).getProperties()) {
        if (!(cell.getValue() instanceof JsonNull)) {
          cells.put(cell.getName(), text(cell.getValue()));
        }
      }
      rows.add(cells);
    }
    return rows;
  }

  private static String text(JsonElement cell) {
    if (cell instanceof JsonArray list) {
      List<String> texts = new ArrayList<>();
      list.forEach(one -> texts.add(text(one)));
      return texts.toString();
    }
    return ((JsonPrimitive) cell).getValue();
  }

  private static Provider provider(List<Base> resources) {
    return new Provider() {
      @Override
      public List<Base> fetch(String type) {
        return resources.stream().filter(one -> one.fhirType().equals(type)).toList();
      }

      /** Takes every relative reference for one to a resource that is there. */
      @Override
      public Base resolveReference(Base from, String reference, String type) {
        int slash = reference.indexOf('/');
        String named = reference.substring(0, slash);
        String id = reference.substring(slash + 1);
        return type == null || type.equals(named)
            ? resource("{\"resourceType\":\"" + named + "\",\"id\":\"" + id + "\"}")
            : null;
      }
    };
  }
}
