package org.isopter.task.page;

import java.util.Optional;
import org.isopter.model.compare.Change;
import org.isopter.model.compare.Comparison;
import org.isopter.model.exam.Exam;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A comparison as one line of JSON. */
public final class ComparisonJson {

  private static final JsonMapper MAPPER =
      JsonMapper.builder().enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN).build();

  private ComparisonJson() {}

  /** Returns the comparison with a line feed; unchanged findings only when all are reported. */
  public static String of(Comparison comparison, boolean all) {
    ObjectNode root = MAPPER.createObjectNode();
    visit(root.putObject("earlier"), comparison.earlier());
    visit(root.putObject("later"), comparison.later());
    ArrayNode changes = root.putArray("changes");
    comparison.changes().stream()
        .filter(change -> all || change.kind() != Change.Kind.SAME)
        .forEach(change -> change(changes.addObject(), change));
    return MAPPER.writeValueAsString(root) + "\n";
  }

  private static void visit(ObjectNode node, Exam exam) {
    node.put("record", exam.header().id().toString());
    node.put("performed", exam.header().performed().toString());
  }

  private static void change(ObjectNode node, Change change) {
    node.put("finding", change.finding().id());
    node.put("site", change.site().word());
    node.put("kind", change.kind().words());
    said(change.before()).ifPresent(words -> node.put("before", words));
    said(change.after()).ifPresent(words -> node.put("after", words));
    change
        .by()
        .ifPresent(
            by -> node.putObject("by").put("value", by.value()).put("unit", by.unit().label()));
    change
        .verdict()
        .ifPresent(
            verdict ->
                node.putObject("verdict")
                    .put("text", verdict.text())
                    .put("certainty", verdict.certainty().words())
                    .put("source", verdict.source().text()));
  }

  private static Optional<String> said(String words) {
    return Optional.of(words).filter(some -> !some.isEmpty());
  }
}
