package org.isopter.mapper.store;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.mapper.table.Kind;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Unit;

/**
 * Describes the files as a data package with a table schema each (the Data Package and Table Schema
 * standards of the Frictionless Data project).
 */
final class DataPackage {

  private DataPackage() {}

  static String of(List<CodebookRow> rows, List<TableFormat> formats) {
    Map<String, List<Raw>> fields = new LinkedHashMap<>();
    for (CodebookRow row : rows) {
      fields.computeIfAbsent(row.table(), any -> new ArrayList<>()).add(field(row));
    }
    List<Raw> resources = new ArrayList<>();
    for (TableFormat format : formats) {
      fields.forEach((table, list) -> resources.add(resource(table, format, list)));
    }
    Map<String, Raw> whole = new LinkedHashMap<>();
    whole.put("profile", Raw.of("data-package"));
    whole.put("name", Raw.of("eye-examinations"));
    whole.put("resources", Raw.of(resources));
    return RawJson.write(new Raw.Obj(whole)) + "\n";
  }

  private static Raw resource(String table, TableFormat format, List<Raw> fields) {
    Map<String, Raw> resource = new LinkedHashMap<>();
    resource.put("name", Raw.of(table + "-" + format.ending()));
    resource.put("path", Raw.of(table + "." + format.ending()));
    resource.put("format", Raw.of(format.ending()));
    resource.put("schema", new Raw.Obj(Map.of("fields", Raw.of(fields))));
    return new Raw.Obj(resource);
  }

  private static Raw field(CodebookRow row) {
    Map<String, Raw> field = new LinkedHashMap<>();
    field.put("name", Raw.of(row.column().name()));
    field.put("type", Raw.of(type(row.column().kind())));
    if (row.column().kind() == Kind.TIME) {
      // Seconds may have decimals, which no pattern of the standard allows for.
      field.put("format", Raw.of("any"));
    }
    field.put("description", Raw.of(row.column().meaning()));
    row.column().unit().map(Unit::ucum).ifPresent(unit -> field.put("unit", Raw.of(unit)));
    if (!row.column().answers().isEmpty()) {
      List<Raw.Leaf> words =
          row.column().answers().stream().map(Concept::word).map(Raw::of).toList();
      field.put("constraints", new Raw.Obj(Map.of("enum", Raw.of(words))));
    }
    return new Raw.Obj(field);
  }

  private static String type(Kind kind) {
    return switch (kind) {
      case TEXT -> "string";
      case NUMBER -> "number";
      case INTEGER -> "integer";
      case TRUTH -> "boolean";
      case TIME -> "datetime";
    };
  }
}
