package org.isopter.mapper.record;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.isopter.mapper.record.tree.YamlText;
import org.isopter.model.exam.Exam;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.core.util.DefaultIndenter;
import tools.jackson.core.util.DefaultPrettyPrinter;
import tools.jackson.core.util.Separators;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectWriter;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Writes records; the same examination always gives the same text.
 *
 * <p>Keys stand in the order of the format, findings and entries in that of the examination. Safe
 * for use by several threads.
 */
public final class RecordWriter {

  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
  private static final JsonMapper JSON =
      JsonMapper.builder().enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN).build();

  private final ObjectWriter pretty = JSON.writer().with(layout());

  /** Makes a writer. */
  public RecordWriter() {}

  /** Returns the record on lines of its own, with a line feed at the end. */
  public String write(Exam exam, RecordFormat format) {
    return format == RecordFormat.JSON
        ? pretty.writeValueAsString(tree(exam)) + "\n"
        : YamlText.of(tree(exam));
  }

  /** Returns the record as JSON on one line without a line feed: a line of NDJSON. */
  public String line(Exam exam) {
    return JSON.writeValueAsString(tree(exam));
  }

  /** Returns the record as a tree; numbers keep their digits. */
  public ObjectNode tree(Exam exam) {
    return object(RecordTree.of(exam));
  }

  private static ObjectNode object(Map<?, ?> members) {
    ObjectNode node = NODES.objectNode();
    members.forEach((key, value) -> node.set((String) key, node(value)));
    return node;
  }

  private static JsonNode node(Object value) {
    if (value instanceof Map<?, ?> members) {
      return object(members);
    }
    if (value instanceof List<?> items) {
      ArrayNode node = NODES.arrayNode();
      items.forEach(item -> node.add(node(item)));
      return node;
    }
    if (value instanceof BigDecimal number) {
      return NODES.numberNode(number);
    }
    if (value instanceof Integer count) {
      return NODES.numberNode(count);
    }
    return value instanceof Boolean truth
        ? NODES.booleanNode(truth)
        : NODES.stringNode((String) value);
  }

  private static DefaultPrettyPrinter layout() {
    // The line feed and not that of the platform: a record is the same bytes everywhere.
    DefaultIndenter lines = new DefaultIndenter("  ", "\n");
    return new DefaultPrettyPrinter(
            Separators.createDefaultInstance().withObjectNameValueSpacing(Separators.Spacing.AFTER))
        .withObjectIndenter(lines)
        .withArrayIndenter(lines);
  }
}
