package org.isopter.mapper.record;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import org.isopter.mapper.record.tree.YamlText;
import org.isopter.model.exam.Demographics;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;
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
    ObjectNode tree = NODES.objectNode();
    header(exam.header(), tree);
    ObjectNode findings = tree.putObject(Keys.FINDINGS);
    exam.facts().forEach(fact -> put(fact, findings));
    return tree;
  }

  private static void header(Header header, ObjectNode tree) {
    tree.put(Keys.ISOPTER, Keys.VERSION);
    tree.set(Keys.RECORD, identifier(header.id()));
    tree.set(Keys.SUBJECT, subject(header));
    header.performer().ifPresent(party -> tree.set(Keys.PERFORMER, party(party)));
    tree.put(Keys.PERFORMED, time(header.performed()));
    tree.put(Keys.STATUS, header.status().word());
    header.setting().ifPresent(setting -> tree.put(Keys.SETTING, setting.word()));
    header.amends().ifPresent(old -> tree.set(Keys.AMENDS, identifier(old)));
    header.remark().ifPresent(remark -> tree.put(Keys.REMARK, remark));
  }

  private static ObjectNode identifier(Identifier identifier) {
    ObjectNode node = NODES.objectNode().put(Keys.ID, identifier.value());
    identifier.system().ifPresent(system -> node.put(Keys.SYSTEM, system));
    return node;
  }

  private static ObjectNode subject(Header header) {
    ObjectNode node = party(header.subject());
    Layout<Demographics> layout = Demographics.LAYOUT;
    layout.encode(header.demographics()).parts().forEach((key, part) -> node.set(key, part(part)));
    return node;
  }

  private static ObjectNode party(Party party) {
    ObjectNode node = party.identifier().map(RecordWriter::identifier).orElseGet(NODES::objectNode);
    party.name().ifPresent(name -> node.put(Keys.NAME, name));
    return node;
  }

  /** Puts a fact beside those of its finding and site: alone, or in a list. */
  private static void put(Fact<?> fact, ObjectNode findings) {
    ObjectNode sites = findings.withObjectProperty(fact.finding().id());
    String site = fact.site().word();
    JsonNode before = sites.get(site);
    JsonNode entry = entry(fact);
    if (before == null) {
      sites.set(site, entry);
    } else if (before instanceof ArrayNode list) {
      list.add(entry);
    } else {
      sites.putArray(site).add(before).add(entry);
    }
  }

  private static <V> JsonNode entry(Fact<V> fact) {
    ObjectNode entry = NODES.objectNode();
    fact.panel().ifPresent(panel -> found(fact.finding().layout(), panel, entry));
    fact.outcome().ifAbsent().ifPresent(reason -> absent(reason, entry));
    fact.method().map(Concept::word).ifPresent(word -> entry.put(Keys.METHOD, word));
    fact.at().ifPresent(at -> entry.put(Keys.AT, time(at)));
    fact.device().ifPresent(device -> entry.put(Keys.DEVICE, device));
    if (!fact.remarks().isEmpty()) {
      ArrayNode remarks = entry.putArray(Keys.REMARKS);
      fact.remarks().forEach(remarks::add);
    }
    JsonNode alone = entry.size() == 1 ? entry.get(Keys.VALUE) : null;
    return alone == null ? entry : alone;
  }

  private static void found(Layout<?> layout, EncodedValue panel, ObjectNode entry) {
    Optional<JsonNode> value =
        layout.choice().isPresent()
            ? Optional.of(NODES.stringNode(layout.writeChoice(panel)))
            : panel.value().map(datum -> datum.fold(DatumWriter.INSTANCE));
    value.ifPresent(node -> entry.set(Keys.VALUE, node));
    for (Part<?, ?> part : layout.commonParts()) {
      Outcome<Datum> outcome = panel.parts().get(part.key());
      if (outcome != null) {
        entry.set(part.key(), part(outcome));
      }
    }
  }

  private static JsonNode part(Outcome<Datum> outcome) {
    return outcome.fold(
        datum -> datum.fold(DatumWriter.INSTANCE), reason -> absent(reason, NODES.objectNode()));
  }

  private static ObjectNode absent(Absence reason, ObjectNode entry) {
    return entry.put(Keys.ABSENT, reason.word());
  }

  private static String time(OffsetDateTime time) {
    return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(time);
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
