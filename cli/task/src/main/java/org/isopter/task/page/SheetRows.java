package org.isopter.task.page;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.isopter.mapper.record.PlainJson;
import org.isopter.model.entry.EntryField;
import org.isopter.model.entry.FieldAnswer;
import org.isopter.model.entry.UsualStep;

/**
 * The rows of the sheet as data of its page, so that it can be shown and written in before the
 * script of the model runs.
 */
final class SheetRows {

  private static final OffsetDateTime ANY_DAY = OffsetDateTime.parse("2026-01-01T12:00:00Z");

  private SheetRows() {}

  /** Returns the rows as JSON, each with what its button for normal records. */
  static String json() {
    List<Object> rows = new ArrayList<>();
    UsualStep.allFields().forEach(row -> rows.add(row(row)));
    return PlainJson.of(Map.of("rows", rows));
  }

  private static Map<String, Object> row(EntryField row) {
    Map<String, Object> one = new LinkedHashMap<>();
    one.put("key", row.key());
    one.put("title", row.title());
    one.put("perEye", row.perEye());
    one.put("example", row.example());
    one.put("normal", row.normal());
    one.put("normalRecords", String.join("; ", FieldAnswer.normal(row, ANY_DAY)));
    return one;
  }
}
