package org.isopter.mapper.record.schema;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.record.HeaderReader;
import org.isopter.mapper.record.Keys;
import org.isopter.mapper.record.Scalars;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Demographics;
import org.isopter.model.exam.Status;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Choice;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Site;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Writes the JSON Schema of a record from the descriptions of the findings. */
final class SchemaTree {

  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
  private static final String TEXT = "text";
  private static final String TIME = "time";
  private static final String REASON = "reason";
  private static final String IDENTIFIER = "identifier";
  private static final String PERSON = "person";
  private static final String SUBJECT = "subject";

  private final ObjectNode schema = NODES.objectNode();
  private final ObjectNode definitions = NODES.objectNode();

  private SchemaTree() {}

  static ObjectNode of(Catalogue catalogue, String id) {
    SchemaTree tree = new SchemaTree();
    tree.schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
    tree.schema.put("$id", id);
    tree.schema.put("title", "Isopter record");
    tree.shared();
    tree.header();
    tree.findings(catalogue);
    tree.schema.set("$defs", tree.definitions);
    return tree.schema;
  }

  private void shared() {
    definitions.set(TEXT, SpecSchema.text());
    definitions.set(TIME, SpecSchema.pattern(Scalars.TIME));
    definitions.set(REASON, SpecSchema.words(Scalars.REASONS));
    ObjectNode identifier = closed(definitions.putObject(IDENTIFIER));
    properties(identifier, TEXT, List.of(Keys.ID, Keys.SYSTEM));
    identifier.putArray("required").add(Keys.ID);
    person(PERSON);
    ObjectNode subject = (ObjectNode) person(SUBJECT).get("properties");
    Demographics.LAYOUT.commonParts().forEach(part -> subject.set(part.key(), part(part)));
    ObjectNode part = closed(definitions.putObject("absent-part"));
    properties(part, REASON, List.of(Keys.ABSENT));
    part.putArray("required").add(Keys.ABSENT);
  }

  private ObjectNode person(String definition) {
    ObjectNode person = closed(definitions.putObject(definition));
    properties(person, TEXT, List.of(Keys.ID, Keys.SYSTEM, Keys.NAME));
    ArrayNode ways = person.putArray("anyOf");
    ways.addObject().putArray("required").add(Keys.ID);
    ways.addObject().putArray("required").add(Keys.NAME);
    person.putObject("dependentRequired").putArray(Keys.SYSTEM).add(Keys.ID);
    return person;
  }

  private void header() {
    ObjectNode properties = closed(schema).putObject("properties");
    properties.putObject(Keys.ISOPTER).put("const", Keys.VERSION);
    properties.set(Keys.RECORD, ref(IDENTIFIER));
    properties.set(Keys.SUBJECT, ref(SUBJECT));
    properties.set(Keys.PERFORMER, ref(PERSON));
    properties.set(Keys.PERFORMED, ref(TIME));
    properties.set(
        Keys.STATUS, SpecSchema.oneOf(Arrays.stream(Status.values()).map(Status::word).toList()));
    properties.set(Keys.SETTING, SpecSchema.words(HeaderReader.SETTINGS));
    properties.set(Keys.AMENDS, ref(IDENTIFIER));
    properties.set(Keys.REMARK, ref(TEXT));
    ArrayNode required = schema.putArray("required");
    List.of(Keys.ISOPTER, Keys.RECORD, Keys.SUBJECT, Keys.PERFORMED, Keys.STATUS, Keys.FINDINGS)
        .forEach(required::add);
    amended();
  }

  private void amended() {
    ObjectNode amended = schema.putObject("if").putObject("properties").putObject(Keys.STATUS);
    amended.put("const", Status.AMENDED.word());
    schema.putObject("then").putArray("required").add(Keys.AMENDS);
    schema.putObject("else").putObject("properties").put(Keys.AMENDS, false);
  }

  private void findings(Catalogue catalogue) {
    ObjectNode findings = closed(((ObjectNode) schema.get("properties")).putObject(Keys.FINDINGS));
    ObjectNode properties = findings.putObject("properties");
    for (Finding<?> finding : catalogue.all()) {
      define(finding);
      properties.set(finding.id(), sites(finding));
    }
  }

  private static ObjectNode sites(Finding<?> finding) {
    ObjectNode sites = closed(NODES.objectNode()).put("minProperties", 1);
    ObjectNode properties = sites.putObject("properties");
    finding.sites().stream()
        .map(Site::word)
        .forEach(site -> properties.set(site, ref(finding.id())));
    return sites;
  }

  /** Defines a finding's entries: one, or a list of them. */
  private void define(Finding<?> finding) {
    ObjectNode either = definitions.putObject(finding.id());
    either.put("title", finding.title());
    either.set("if", SpecSchema.type("array"));
    ObjectNode list = either.putObject("then").put("minItems", 1);
    list.set("items", ref(finding.id() + ".entry"));
    either.set("else", ref(finding.id() + ".entry"));

    ObjectNode entry = definitions.putObject(finding.id() + ".entry");
    entry.set("if", SpecSchema.type("object"));
    entry.set("then", keyed(finding));
    entry.set("else", bare(finding.layout()));
  }

  private ObjectNode keyed(Finding<?> finding) {
    ObjectNode keyed = NODES.objectNode();
    keyed.putObject("if").putArray("required").add(Keys.ABSENT);
    ObjectNode absent = closed(keyed.putObject("then"));
    ObjectNode properties = absent.putObject("properties");
    properties.set(Keys.ABSENT, ref(REASON));
    around(finding.methods(), properties);
    keyed.set("else", found(finding));
    return keyed;
  }

  private ObjectNode found(Finding<?> finding) {
    Layout<?> layout = finding.layout();
    ObjectNode found = closed(NODES.objectNode());
    ObjectNode properties = found.putObject("properties");
    ArrayNode required = NODES.arrayNode();
    value(layout).ifPresent(value -> properties.set(Keys.VALUE, value));
    value(layout).ifPresent(value -> required.add(Keys.VALUE));
    for (Part<?, ?> part : layout.commonParts()) {
      properties.set(part.key(), part(part));
      if (part.isRequired()) {
        required.add(part.key());
      }
    }
    around(finding.methods(), properties);
    if (!required.isEmpty()) {
      found.set("required", required);
    }
    RuleSchema.add(layout, found);
    return found;
  }

  private static void around(Optional<Answers> methods, ObjectNode properties) {
    methods.ifPresent(list -> properties.set(Keys.METHOD, SpecSchema.words(list)));
    properties.set(Keys.AT, ref(TIME));
    properties.set(Keys.DEVICE, ref(TEXT));
    ObjectNode remarks = SpecSchema.type("array").put("minItems", 1);
    remarks.set("items", ref(TEXT));
    properties.set(Keys.REMARKS, remarks);
  }

  private static ObjectNode part(Part<?, ?> part) {
    ObjectNode found = part.spec().fold(SpecSchema.INSTANCE);
    if (!part.mayBeAbsent()) {
      return found;
    }
    ObjectNode either = NODES.objectNode();
    either.set("if", SpecSchema.type("object"));
    either.set("then", ref("absent-part"));
    either.set("else", found);
    return either;
  }

  private static ObjectNode bare(Layout<?> layout) {
    boolean alone = layout.commonParts().stream().noneMatch(Part::isRequired);
    return value(layout).filter(value -> alone).orElseGet(() -> SpecSchema.type("object"));
  }

  private static Optional<ObjectNode> value(Layout<?> layout) {
    Optional<Spec> spec = layout.variants().get(0).value();
    return layout
        .choice()
        .map(Choice::pattern)
        .map(SpecSchema::pattern)
        .or(() -> spec.map(single -> single.fold(SpecSchema.INSTANCE)));
  }

  private static void properties(ObjectNode schema, String definition, List<String> keys) {
    ObjectNode properties = schema.putObject("properties");
    keys.forEach(key -> properties.set(key, ref(definition)));
  }

  private static ObjectNode closed(ObjectNode schema) {
    return schema.put("type", "object").put("additionalProperties", false);
  }

  private static ObjectNode ref(String definition) {
    return NODES.objectNode().put("$ref", "#/$defs/" + definition);
  }
}
