package org.isopter.task.page;

import java.util.List;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Span;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** The catalogue for programs: a JSON list of findings. */
final class CatalogueJson {

  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private CatalogueJson() {}

  static String of(List<Finding<?>> findings) {
    ArrayNode list = NODES.arrayNode();
    findings.forEach(finding -> list.add(of(finding)));
    return JsonMapper.shared().writerWithDefaultPrettyPrinter().writeValueAsString(list) + "\n";
  }

  private static ObjectNode of(Finding<?> finding) {
    ObjectNode node = NODES.objectNode().put("id", finding.id()).put("title", finding.title());
    finding.sites().forEach(site -> node.withArrayProperty("sites").add(site.word()));
    CatalogueRows.codes(finding).forEach(row -> node.withArrayProperty("codes").add(of(row)));
    CatalogueRows.values(finding).forEach(row -> node.withArrayProperty("values").add(of(row)));
    finding.methods().ifPresent(list -> node.set("methods", answers(list)));
    finding.layout().rules().forEach(r -> node.withArrayProperty("rules").add(r.sentence()));
    finding.distinguishing().forEach(key -> node.withArrayProperty("distinguishedBy").add(key));
    if (!finding.note().isEmpty()) {
      node.put("note", finding.note());
    }
    finding.citations().forEach(c -> node.withArrayProperty("sources").add(c.text()));
    return node;
  }

  private static ObjectNode of(CatalogueRows.CodeRow row) {
    ObjectNode node = of(row.code());
    return row.where().isEmpty() ? node : node.put("holdsFor", row.where());
  }

  private static ObjectNode of(CatalogueRows.ValueRow row) {
    ObjectNode node = NODES.objectNode().put("key", row.key());
    if (!row.notation().isEmpty()) {
      node.put("notation", row.notation());
    }
    node.put("need", row.need()).put("mayBe", row.mayBe());
    if (row.spec() instanceof Spec.Coded coded) {
      node.set("answers", answers(coded.answers()));
    }
    if (row.spec() instanceof Spec.Measure measure) {
      measure.spans().forEach(span -> node.withArrayProperty("units").add(of(span)));
    }
    return node;
  }

  private static ObjectNode of(Span span) {
    return NODES
        .objectNode()
        .put("ucum", span.unit().ucum())
        .put("text", span.unit().text())
        .put("least", span.least())
        .put("most", span.most());
  }

  private static ArrayNode answers(Answers answers) {
    ArrayNode list = NODES.arrayNode();
    for (Concept concept : answers.concepts()) {
      ObjectNode node = NODES.objectNode().put("word", concept.word());
      node.setAll(of(concept.code()));
      list.add(node);
    }
    return list;
  }

  private static ObjectNode of(Code code) {
    return NODES
        .objectNode()
        .put("system", code.system())
        .put("code", code.code())
        .put("display", code.display());
  }
}
