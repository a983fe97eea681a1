package org.isopter.profiles;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.stream.Stream;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Codes;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Sampler;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Breaks one rule of a valid observation: the one that an invariant's key names by its ending. */
final class Breaker {

  private static final BigDecimal FAR_OFF = new BigDecimal(99_999);

  private final Finding<?> finding;
  private final Sampler sampler;
  private final ObjectNode observation;

  private Breaker(Fact<?> fact, Sampler sampler) {
    this.finding = fact.finding();
    this.sampler = sampler;
    this.observation = Wire.observation(fact);
  }

  /** Returns the broken observation; empty where the fact has nothing to break in this way. */
  static Optional<ObjectNode> broken(Fact<?> fact, String rule, Sampler sampler) {
    Breaker breaker = new Breaker(fact, sampler);
    return breaker.breakRule(rule) ? Optional.of(breaker.observation) : Optional.empty();
  }

  private boolean breakRule(String rule) {
    if (finding.codes().refined().stream().anyMatch(r -> r.when().name().equals(rule))) {
      return removeRefined(rule);
    }
    List<Map.Entry<String, BiPredicate<Breaker, String>>> endings =
        List.of(
            Map.entry("site", (b, subject) -> b.otherSite()),
            Map.entry("side", (b, subject) -> b.otherSide()),
            Map.entry("present", (b, subject) -> b.removeValue()),
            Map.entry("any-part", (b, subject) -> b.observation.remove("component") != null),
            Map.entry("absent", (b, subject) -> b.addPart("lighting")),
            Map.entry("-required", Breaker::removePart),
            Map.entry("-outcome", Breaker::bothOutcomes),
            Map.entry("-range", Breaker::outOfRange),
            Map.entry("-decimals", Breaker::tooFine),
            Map.entry("-unit", Breaker::otherUnit),
            Map.entry("-only", Breaker::addPart));
    for (Map.Entry<String, BiPredicate<Breaker, String>> ending : endings) {
      if (rule.endsWith(ending.getKey())) {
        String subject = rule.substring(0, rule.length() - ending.getKey().length());
        return ending.getValue().test(this, subject);
      }
    }
    return breakNamed(rule);
  }

  private boolean breakNamed(String rule) {
    if (rule.startsWith("as-")) {
      return otherNotation(rule.substring(3));
    }
    int with = rule.indexOf("-with-");
    if (with >= 0) {
      return removePart(rule.substring(with + 6));
    }
    int needs = rule.indexOf("-for-");
    if (needs >= 0) {
      return removePart(rule.substring(0, needs));
    }
    return isNotation(rule) && removePart(rule);
  }

  private boolean isNotation(String rule) {
    return finding.layout().choice().filter(choice -> choice.key().equals(rule)).isPresent();
  }

  private boolean otherSite() {
    Site other =
        List.of(Site.values()).stream()
            .filter(site -> !finding.sites().contains(site))
            .findFirst()
            .orElseThrow();
    Wire.concept((ObjectNode) observation.get("bodySite"), other.code());
    finding.codes().bySite().values().forEach(code -> removeCoding(code));
    return true;
  }

  /** Turns the body site round under a code that names a side. */
  private boolean otherSide() {
    Optional<Site> named =
        sided()
            .filter(sided -> sided.getKey() != Site.BOTH && has(sided.getValue()))
            .map(Map.Entry::getKey)
            .findFirst();
    named.ifPresent(
        site -> Wire.concept((ObjectNode) observation.get("bodySite"), site.fellow().code()));
    return named.isPresent();
  }

  private Stream<Map.Entry<Site, Code>> sided() {
    return Stream.concat(
        finding.codes().bySite().entrySet().stream(),
        finding.codes().refined().stream()
            .filter(Codes.Refined::isSided)
            .flatMap(refined -> refined.bySite().entrySet().stream()));
  }

  private boolean has(Code code) {
    for (JsonNode coding : codings()) {
      if (is(coding, code)) {
        return true;
      }
    }
    return false;
  }

  private boolean removeRefined(String rule) {
    boolean[] removed = {false};
    finding.codes().refined().stream()
        .filter(refined -> rule.equals(refined.when().name()))
        .flatMap(refined -> refined.bySite().values().stream())
        .forEach(code -> removed[0] |= removeCoding(code));
    return removed[0];
  }

  private boolean removeCoding(Code code) {
    return removeIf(codings(), coding -> is(coding, code));
  }

  private boolean removeValue() {
    List<String> values =
        observation.propertyNames().stream().filter(name -> name.startsWith("value")).toList();
    values.forEach(observation::remove);
    return !values.isEmpty();
  }

  private boolean removePart(String key) {
    Code code = code(key);
    boolean removed =
        observation.get("component") instanceof ArrayNode components
            && removeIf(components, each -> is(each.at("/code/coding/0"), code));
    if (observation.path("component").isEmpty()) {
      observation.remove("component");
    }
    return removed;
  }

  private boolean addPart(String key) {
    Part<?, ?> part = part(key).orElseThrow();
    if (component(key).isPresent()) {
      return false;
    }
    ArrayNode components =
        observation.get("component") instanceof ArrayNode there
            ? there
            : observation.putArray("component");
    Datum datum = sampler.datum(part.spec());
    Wire.component(components.addObject(), part, Outcome.found(datum));
    return true;
  }

  private boolean bothOutcomes(String key) {
    return component(key)
        .filter(each -> !each.has("dataAbsentReason"))
        .map(each -> Wire.absent(each, org.isopter.model.value.Absence.UNABLE))
        .isPresent();
  }

  private boolean otherNotation(String word) {
    ObjectNode notation = component(finding.layout().choice().orElseThrow().key()).orElse(null);
    if (notation == null) {
      return false;
    }
    Concept wanted = finding.layout().choice().orElseThrow().notations().byWord(word).orElseThrow();
    Wire.concept((ObjectNode) notation.get("valueCodeableConcept"), wanted.code());
    return true;
  }

  private boolean outOfRange(String subject) {
    ObjectNode holder = holder(subject).orElse(null);
    if (holder == null || !inNotation(subject)) {
      return false;
    }
    if (holder.has("valueInteger")) {
      holder.put("valueInteger", FAR_OFF.intValue());
      return true;
    }
    return number(holder).map(number -> number.put("value", FAR_OFF)).isPresent();
  }

  private boolean tooFine(String subject) {
    return holder(subject)
        .filter(any -> inNotation(subject))
        .flatMap(Breaker::number)
        .map(number -> number.put("value", finer(number)))
        .isPresent();
  }

  private boolean otherUnit(String subject) {
    return holder(subject)
        .flatMap(Breaker::number)
        .map(number -> number.put("code", "kg"))
        .isPresent();
  }

  private static BigDecimal finer(ObjectNode number) {
    // Even zeros tell of a precision that is not to be had.
    return number.get("value").decimalValue().setScale(6);
  }

  private static Optional<ObjectNode> number(ObjectNode holder) {
    return Optional.ofNullable((ObjectNode) holder.get("valueQuantity"))
        .or(() -> Optional.ofNullable((ObjectNode) holder.at("/valueRatio").get("numerator")));
  }

  private boolean inNotation(String subject) {
    if (!subject.startsWith("as-")) {
      return true;
    }
    String code = subject.substring(3);
    return component(finding.layout().choice().orElseThrow().key())
        .filter(each -> each.at("/valueCodeableConcept/coding/0/code").asString().equals(code))
        .isPresent();
  }

  private Optional<ObjectNode> holder(String subject) {
    boolean whole = subject.equals("value") || subject.startsWith("as-");
    return whole ? Optional.of(observation) : component(subject);
  }

  private Optional<ObjectNode> component(String key) {
    Code code = code(key);
    List<ObjectNode> found = new ArrayList<>();
    for (JsonNode each : observation.path("component")) {
      if (is(each.at("/code/coding/0"), code)) {
        found.add((ObjectNode) each);
      }
    }
    return found.stream().findFirst();
  }

  private Code code(String key) {
    return part(key)
        .<Code>map(Part::code)
        .orElseGet(() -> finding.layout().choice().orElseThrow().code());
  }

  private Optional<Part<?, ?>> part(String key) {
    return finding.layout().variants().stream()
        .<Part<?, ?>>flatMap(variant -> variant.parts().stream())
        .filter(part -> part.key().equals(key))
        .findFirst();
  }

  private ArrayNode codings() {
    return (ArrayNode) observation.at("/code/coding");
  }

  private static boolean is(JsonNode coding, Code code) {
    return coding.path("system").asString("").equals(code.system())
        && coding.path("code").asString("").equals(code.code());
  }

  private static boolean removeIf(
      ArrayNode array, java.util.function.Predicate<JsonNode> unwanted) {
    boolean removed = false;
    for (Iterator<JsonNode> each = array.iterator(); each.hasNext(); ) {
      if (unwanted.test(each.next())) {
        each.remove();
        removed = true;
      }
    }
    return removed;
  }
}
