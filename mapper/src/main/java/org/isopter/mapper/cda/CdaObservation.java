package org.isopter.mapper.cda;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.mapper.json.Raw;

/**
 * One observation of a clinical document as one of FHIR. What it says and FHIR has no place for may
 * turn its meaning round, and becomes a modifier extension, with which nobody takes the value; who
 * wrote it, and by which template, does not.
 */
final class CdaObservation {

  private static final Map<String, String> STATUS =
      Map.of(
          "completed", "final",
          "active", "preliminary",
          "aborted", "cancelled",
          "cancelled", "cancelled",
          "nullified", "entered-in-error",
          "obsolete", "entered-in-error");

  /** What is read below, and what says nothing of what was found. */
  private static final Set<String> KNOWN =
      Set.of(
          "templateId",
          "id",
          "code",
          "text",
          "statusCode",
          "effectiveTime",
          "value",
          "interpretationCode",
          "methodCode",
          "targetSiteCode",
          "languageCode",
          "author",
          "performer",
          "informant",
          "referenceRange",
          "entryRelationship",
          "realmCode",
          "typeId");

  private static final String SITE = "targetSiteCode";
  private static final String UNITS = "246514001";
  private static final String COMMENT = "48767-8";
  private static final String FEET = "(\\[ft_us]|\\[ft_i]|ft)/(\\[ft_us]|\\[ft_i]|ft)";

  private final CdaNode node;
  private final CdaNarrative narrative;
  private final Map<String, Raw> resource = new LinkedHashMap<>();
  private final List<Raw> unread = new ArrayList<>();
  private final List<Raw> notes = new ArrayList<>();

  private CdaObservation(CdaNode node, CdaNarrative narrative) {
    this.node = node;
    this.narrative = narrative;
  }

  /**
   * Returns an observation.
   *
   * @param narrative the text for people
   */
  static Raw.Obj of(CdaNode node, CdaNarrative narrative, Optional<Raw.Obj> subject) {
    return new CdaObservation(node, narrative).read(subject);
  }

  /** Returns a modifier extension about something that is not read. */
  static Raw.Obj unread(String what) {
    return CdaValue.object("url", Raw.of("urn:hl7-org:v3#" + what))
        .with("valueBoolean", new Raw.Leaf(Raw.Kind.TRUTH, "true"));
  }

  private Raw.Obj read(Optional<Raw.Obj> subject) {
    resource.put("resourceType", Raw.of("Observation"));
    List<Raw.Obj> ids = node.all("id").stream().map(CdaValue::identifier).toList();
    if (!ids.isEmpty()) {
      resource.put("identifier", Raw.of(ids));
    }
    node.first("statusCode")
        .flatMap(status -> status.attribute("code"))
        .flatMap(code -> Optional.ofNullable(STATUS.get(code)))
        .ifPresent(status -> resource.put("status", Raw.of(status)));
    concept("code", "code");
    subject.ifPresent(who -> resource.put("subject", who));
    time();
    value();
    concept("interpretationCode", "interpretation");
    concept("methodCode", "method");
    concept(SITE, "bodySite");
    ranges();
    attributes();
    node.all("entryRelationship").forEach(this::related);
    text();
    node.children().stream()
        .map(CdaNode::name)
        .filter(name -> !KNOWN.contains(name))
        .forEach(name -> unread.add(unread(name)));
    put("note", notes);
    put("modifierExtension", unread);
    return new Raw.Obj(resource);
  }

  private void put(String name, List<Raw> all) {
    if (!all.isEmpty()) {
      resource.put(name, Raw.of(all));
    }
  }

  /** A code that stands twice, or that is qualified, says more than one concept can. */
  private void concept(String name, String as) {
    List<CdaNode> all = node.all(name);
    Optional<Raw.Obj> side =
        name.equals(SITE) ? all.stream().findFirst().flatMap(CdaValue::side) : Optional.empty();
    boolean plain = all.size() == 1 && (side.isPresent() || all.get(0).all("qualifier").isEmpty());
    Optional<Raw.Obj> concept =
        all.stream()
            .findFirst()
            .flatMap(CdaValue::concept)
            .map(one -> side.map(qualifier -> CdaValue.with(one, qualifier)).orElse(one));
    boolean silent =
        !name.equals("code")
            && !name.equals(SITE)
            && all.stream().allMatch(CdaObservation::isSilent);
    if (silent) {
      return;
    }
    if (plain && concept.isPresent()) {
      Raw.Obj said = said(concept.get(), all.get(0));
      resource.put(as, as.equals("interpretation") ? Raw.of(List.of(said)) : said);
    } else if (!all.isEmpty()) {
      unread.add(unread(name));
    }
  }

  private static boolean isSilent(CdaNode code) {
    return code.attribute("nullFlavor").isPresent()
        && code.attribute("code").isEmpty()
        && code.children().isEmpty();
  }

  /** What was written where the code was chosen stands beside it, for the two may disagree. */
  private Raw.Obj said(Raw.Obj concept, CdaNode code) {
    String words =
        code.first("originalText").map(this::words).orElse("").replaceAll("[:\\s]+$", "");
    return words.isEmpty() ? concept : concept.with("text", Raw.of(words));
  }

  private void time() {
    List<CdaNode> times = node.all("effectiveTime");
    Optional<String> time = times.stream().findFirst().flatMap(CdaValue::time);
    if (times.size() == 1 && time.isPresent()) {
      resource.put("effectiveDateTime", Raw.of(time.get()));
    } else if (times.size() == 1 && times.get(0).first("low").isPresent()) {
      Map<String, Raw> period = new LinkedHashMap<>();
      edge("low", times.get(0)).ifPresent(text -> period.put("start", text));
      edge("high", times.get(0)).ifPresent(text -> period.put("end", text));
      resource.put("effectivePeriod", new Raw.Obj(period));
    } else if (!times.isEmpty()) {
      unread.add(unread("effectiveTime"));
    }
  }

  private static Optional<Raw> edge(String name, CdaNode period) {
    return period.first(name).flatMap(CdaValue::time).map(Raw::of);
  }

  private void value() {
    List<CdaNode> values = node.all("value");
    Optional<Map.Entry<String, Raw>> value = values.stream().findFirst().flatMap(CdaValue::of);
    if (values.size() == 1 && value.isPresent()) {
      Raw read = value.get().getValue();
      boolean coded = value.get().getKey().equals("valueCodeableConcept");
      resource.put(value.get().getKey(), coded ? said((Raw.Obj) read, values.get(0)) : read);
    } else if (!values.isEmpty()) {
      unread.add(unread("value"));
    }
  }

  private void ranges() {
    List<Raw> ranges =
        node.all("referenceRange").stream()
            .map(CdaNode::text)
            .filter(text -> !text.isEmpty())
            .<Raw>map(text -> CdaValue.object("text", Raw.of(text)))
            .toList();
    put("referenceRange", ranges);
  }

  private void attributes() {
    boolean found = node.has("classCode", "OBS") && node.has("moodCode", "EVN");
    if (!found || node.attribute("nullFlavor").isPresent()) {
      unread.add(unread("moodCode"));
    }
    if (node.attribute("negationInd").filter(text -> !text.equals("false")).isPresent()) {
      unread.add(unread("negationInd"));
    }
  }

  /**
   * A unit that the value has already says nothing more; glasses correct it; a comment is a note.
   */
  private void related(CdaNode relationship) {
    List<CdaNode> inside = relationship.children();
    boolean plain = inside.size() == 1 && relationship.attribute("negationInd").isEmpty();
    Optional<CdaNode> one = plain ? Optional.of(inside.get(0)) : Optional.empty();
    String code =
        one.flatMap(child -> child.first("code")).flatMap(it -> it.attribute("code")).orElse("");
    if (code.equals(COMMENT)) {
      one.flatMap(child -> child.first("text")).ifPresent(text -> note(words(text)));
    } else if (one.filter(CdaAid::isGlasses).isPresent() && resource.containsKey("code")) {
      resource.put("code", CdaAid.corrected((Raw.Obj) resource.get("code")));
    } else if (!code.equals(UNITS) || !isUnitOfValue(one.orElseThrow())) {
      unread.add(unread("entryRelationship"));
    }
  }

  private boolean isUnitOfValue(CdaNode units) {
    String unit = units.first("value").flatMap(it -> it.attribute("code")).orElse("");
    return node.first("value")
        .filter(
            value ->
                value.type().equals("PQ")
                    ? value.has("unit", unit)
                    : unit.matches(FEET) && value.text().startsWith("20/"))
        .isPresent();
  }

  /** The text for people repeats the value or the code; where it says more, that is a note. */
  private void text() {
    Optional<String> name = node.first("code").flatMap(code -> code.attribute("displayName"));
    for (CdaNode text : node.all("text")) {
      String words = words(text);
      if (isContradicted(words)) {
        unread.add(unread("text"));
      }
      if (!isValue(words) && !name.equals(Optional.of(words))) {
        note(words);
      }
    }
    narrated();
  }

  /**
   * The row of a table in which the value, its method or its eye was written goes along, for it
   * names the eye; where there is none, the text of the section has the value.
   */
  private void narrated() {
    Set<String> rows =
        references(node)
            .flatMap(to -> narrative.row(to).stream())
            .collect(Collectors.toCollection(LinkedHashSet::new));
    List<CdaNumbers> numbers = numbers();
    Stream<String> beside =
        rows.isEmpty() ? Stream.of(CdaNarrative.ofSection(node)) : rows.stream();
    if (beside.anyMatch(words -> numbers.stream().anyMatch(one -> one.isMissingIn(words)))) {
      unread.add(unread("text"));
    }
    if (!rows.isEmpty()) {
      String div = "<div>" + String.join(" ", rows).replaceAll("[<>&]", " ") + "</div>";
      resource.put("text", new Raw.Obj(Map.of("status", Raw.of("generated"), "div", Raw.of(div))));
    }
  }

  private List<CdaNumbers> numbers() {
    return node.all("value").stream().flatMap(value -> CdaNumbers.of(value).stream()).toList();
  }

  private boolean isContradicted(String words) {
    boolean absent =
        node.all("value").stream().anyMatch(value -> value.attribute("nullFlavor").isPresent());
    return absent
        ? CdaNumbers.isIn(words)
        : numbers().stream().anyMatch(number -> number.isContradictedBy(words));
  }

  /** Returns where the texts of an observation lead: of itself, its method and its eye. */
  private static Stream<String> references(CdaNode node) {
    Stream<CdaNode> texts =
        Stream.concat(
            node.all("text").stream(),
            node.children().stream().flatMap(child -> child.all("originalText").stream()));
    return texts
        .flatMap(text -> text.all("reference").stream())
        .flatMap(reference -> reference.attribute("value").stream());
  }

  private String words(CdaNode text) {
    return text.first("reference")
        .flatMap(reference -> reference.attribute("value"))
        .map(this::referred)
        .orElseGet(text::text);
  }

  /**
   * What is referred to and is not there may have said anything, unless another text of the same
   * observation leads to a row that has the value.
   */
  private String referred(String to) {
    Optional<String> words = narrative.words(to);
    if (words.isEmpty() && !isInARow()) {
      unread.add(unread("reference"));
    }
    return words.orElse("");
  }

  private boolean isInARow() {
    List<CdaNumbers> numbers = numbers();
    return references(node)
        .flatMap(to -> narrative.row(to).stream())
        .anyMatch(row -> numbers.stream().anyMatch(number -> number.isFoundIn(row)));
  }

  private void note(String words) {
    if (!words.isEmpty()) {
      notes.add(CdaValue.object("text", Raw.of(words)));
    }
  }

  private boolean isValue(String words) {
    return node.all("value").stream()
        .anyMatch(
            value ->
                words.equals(value.text())
                    || value.attribute("displayName").filter(words::equals).isPresent()
                    || value
                        .attribute("value")
                        .filter(number -> isAmount(words, number, value))
                        .isPresent());
  }

  private static boolean isAmount(String words, String number, CdaNode value) {
    String unit = value.attribute("unit").orElse("");
    String rest = words.startsWith(number) ? words.substring(number.length()).strip() : "?";
    return rest.isEmpty() || rest.equals(unit) || rest.equals(unit.replaceAll("[\\[\\]]", ""));
  }
}
