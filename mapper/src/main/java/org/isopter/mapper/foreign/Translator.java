package org.isopter.mapper.foreign;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Status;
import org.isopter.model.shape.Answers;
import org.isopter.model.shape.Finding;
import org.isopter.model.value.Concept;
import org.isopter.model.value.PlainText;

/**
 * Translates one observation into facts, as far as it is safe, and gives every reason where not.
 */
final class Translator {

  private final Vocabulary vocabulary;
  private final Options options;
  private final Neighbours neighbours;
  private final Ledger ledger;
  private final Place observation;
  private final List<Reason> reasons = new ArrayList<>();
  private final List<Fact<?>> facts = new ArrayList<>();

  private Translator(Vocabulary vocabulary, Options options, Neighbours neighbours, Raw resource) {
    this.vocabulary = vocabulary;
    this.options = options;
    this.neighbours = neighbours;
    this.ledger = new Ledger(resource);
    this.observation = ledger.root();
  }

  /**
   * What came of an observation.
   *
   * @param head of whom and when; empty where it was refused
   * @param facts what was taken; none where it was refused
   * @param ledger the account of its leaves
   * @param reasons why it, or something in it, was not taken
   */
  record Translation(
      Optional<Head> head, List<Fact<?>> facts, Ledger ledger, List<Reason> reasons) {}

  static Translation of(
      Vocabulary vocabulary, Options options, Neighbours neighbours, Raw resource) {
    return new Translator(vocabulary, options, neighbours, resource).translate();
  }

  private Translation translate() {
    Optional<Head> head = Optional.empty();
    Optional<List<Meaning.Side>> around = Optional.empty();
    try {
      guard();
      around = attempt(() -> Sides.of(vocabulary, observation, neighbours));
      head = head();
      root(around.orElse(List.of()));
    } catch (Refusal refusal) {
      reasons.add(refusal.reason());
    }
    boolean taken = head.isPresent() && around.isPresent() && !facts.isEmpty();
    if (around.isEmpty() && reasons.size() > 1) {
      // That no eye was found follows from what could not be read of it.
      reasons.subList(1, reasons.size()).removeIf(reason -> reason.why() == Why.NO_SIDE);
    }
    if (taken) {
      frame();
    }
    // What is most to the point comes first, in the order of the list of reasons.
    reasons.sort(Comparator.comparing(Reason::why));
    return new Translation(
        taken ? head : Optional.empty(), taken ? facts : List.of(), ledger, reasons);
  }

  /** A step that may be refused. */
  private interface Step<T> {
    T run() throws Refusal;
  }

  /** Runs a step; a refusal is noted, so that all reasons are given and not only the first. */
  private <T> Optional<T> attempt(Step<T> step) {
    try {
      return Optional.of(step.run());
    } catch (Refusal refusal) {
      reasons.add(refusal.reason());
      return Optional.empty();
    }
  }

  private void guard() throws Refusal {
    if (observation.has("implicitRules")) {
      throw Refusal.of(Why.MODIFIED, "/implicitRules", "implicit rules", "none");
    }
    Optional<String> modifier = Modifiers.first(observation.value());
    if (modifier.isPresent()) {
      throw Refusal.of(Why.MODIFIED, modifier.get(), "a modifier extension", "none");
    }
  }

  private Optional<Head> head() {
    Optional<Status> status = attempt(() -> Head.status(observation));
    Optional<OffsetDateTime> time = attempt(() -> Head.time(observation, options.zone()));
    Optional<Party> subject = attempt(() -> Head.subject(observation, neighbours));
    if (status.isEmpty() || time.isEmpty() || subject.isEmpty()) {
      return Optional.empty();
    }
    Optional<String> encounter =
        observation.child("encounter").map(e -> e.text("reference")).filter(r -> !r.isEmpty());
    boolean known = subject.get().identifier().isPresent();
    Optional<Party> performer = Head.performer(observation);
    return Optional.of(
        new Head(subject.get(), known, time.get(), status.get(), encounter, performer));
  }

  private void root(List<Meaning.Side> around) throws Refusal {
    Conditions conditions = new Conditions(vocabulary, neighbours);
    Meaning meaning = conditions.of(observation);
    List<Place> components = new ArrayList<>();
    for (Place component : observation.list("component")) {
      if (!conditions.question(component, meaning)) {
        components.add(component);
      }
    }
    Optional<String> name = meaning.finding();
    if (name.isPresent()) {
      conditions.around(observation, meaning);
    }
    List<Place> own = components(components, name);
    boolean valued = hasValue(observation) || !own.isEmpty();
    List<Place> others = new ArrayList<>(components);
    others.removeAll(own);
    boolean panel = !valued && isPanel(others);
    if (name.isPresent() && !panel) {
      slot(observation, meaning, own, around);
    } else if (!meaning.isGroup() && hasValue(observation)) {
      throw unknown();
    }
    int before = reasons.size();
    others(conditions, others, around);
    if (facts.isEmpty() && reasons.size() == before && (name.isEmpty() || panel)) {
      throw name.isEmpty() ? unknown() : noValue();
    }
  }

  private void others(Conditions conditions, List<Place> components, List<Meaning.Side> around) {
    for (Place component : components) {
      Ledger.Mark mark = ledger.mark();
      Optional<Meaning> meaning = attempt(() -> conditions.of(component));
      if (meaning.isPresent()
          && attempt(() -> meaning.get().finding()).flatMap(f -> f).isPresent()) {
        int before = facts.size();
        slot(component, meaning.get(), List.of(), around);
        if (facts.size() > before) {
          ledger.used("code-component");
        }
      } else {
        ledger.backTo(mark);
      }
    }
  }

  private void slot(Place holder, Meaning meaning, List<Place> parts, List<Meaning.Side> around) {
    Ledger.Mark mark = ledger.mark();
    int before = reasons.size();
    Optional<Fact<?>> fact =
        attempt(
            () -> {
              List<Meaning.Side> sides =
                  SideWords.all(ledger, holder, observation, meaning, around);
              Optional<String> profile = profileNotation();
              return new SlotReader(vocabulary, holder, meaning, parts, sides, profile).read();
            });
    if (reasons.size() > before || fact.isEmpty()) {
      ledger.backTo(mark);
    } else {
      facts.add(dressed(fact.get(), meaning));
    }
  }

  private Optional<String> profileNotation() {
    return observation
        .child("meta")
        .flatMap(
            meta ->
                meta.list("profile").stream()
                    .flatMap(p -> p.value().string().stream())
                    .flatMap(url -> vocabulary.habits().profileNotation(url).stream())
                    .findFirst());
  }

  private Fact<?> dressed(Fact<?> fact, Meaning meaning) {
    Fact<?> dressed = fact;
    Optional<Concept> method = method(fact.finding(), meaning);
    if (method.isPresent()) {
      dressed = dressed.by(method.get());
    }
    String device = observation.child("device").map(d -> d.text("display")).orElse("");
    if (!device.isEmpty() && PlainText.check(device).isEmpty()) {
      observation.child("device").ifPresent(d -> d.take(Ledger.CATALOGUE, "display"));
      dressed = dressed.with(device);
    }
    return facts.isEmpty() ? dressed.remarks(remarks()) : dressed;
  }

  private Optional<Concept> method(Finding<?> finding, Meaning meaning) {
    Optional<Answers> methods = finding.methods();
    Optional<Place> place = observation.child("method");
    if (methods.isPresent() && place.isPresent()) {
      for (Coding coding :
          Coding.of(place.get(), t -> byToken(methods.get(), t).isPresent(), vocabulary)) {
        Optional<Concept> method = byToken(methods.get(), coding.token());
        if (method.isPresent() && coding.sure()) {
          coding.take(Ledger.CATALOGUE, Optional.of(method.get().code().display()));
          return method;
        }
      }
    }
    return meaning.method().flatMap(word -> methods.flatMap(m -> m.byWord(word)));
  }

  private static Optional<Concept> byToken(Answers answers, String token) {
    int bar = token.indexOf('|');
    return answers.byCode(token.substring(0, bar), token.substring(bar + 1));
  }

  private List<String> remarks() {
    List<String> remarks = new ArrayList<>();
    for (Place note : observation.list("note")) {
      String text = note.text("text");
      if (!text.isEmpty() && PlainText.check(text).isEmpty()) {
        note.take(Ledger.CATALOGUE, "text");
        remarks.add(text);
      }
    }
    return remarks;
  }

  /** Takes what our own writer says again of every observation. */
  private void frame() {
    observation.take(Ledger.CATALOGUE, "resourceType");
    Frame.category(observation);
    if (facts.size() == 1 && observation.child("code").isPresent()) {
      Place code = observation.child("code").get();
      if (code.text("text").equals(facts.get(0).finding().title())) {
        code.take(Ledger.CATALOGUE, "text");
      }
    }
  }

  private List<Place> components(List<Place> components, Optional<String> name) {
    Optional<Finding<?>> finding =
        name.map(n -> n.equals(Effect.ACUITY) ? "distance-acuity" : n)
            .flatMap(vocabulary.catalogue()::byId);
    return finding
        .map(
            f ->
                components.stream().filter(c -> PartCode.of(vocabulary, c, f).isPresent()).toList())
        .orElse(List.of());
  }

  private boolean isPanel(List<Place> components) {
    return components.stream()
        .flatMap(component -> component.child("code").stream())
        .flatMap(code -> Coding.of(code, vocabulary::knows, vocabulary).stream())
        .anyMatch(coding -> vocabulary.effect(coding.token()).flatMap(Effect::finding).isPresent());
  }

  private static boolean hasValue(Place holder) {
    return holder.has("dataAbsentReason") || holder.hasValue();
  }

  private static Refusal noValue() {
    return Refusal.of(
        Why.NO_VALUE,
        "/component",
        "no value, and no component that says one",
        "a value, or the reason why there is none");
  }

  private Refusal unknown() {
    String code = observation.child("code").map(c -> RawJson.write(c.value())).orElse("no code");
    String seen = code.length() <= 160 ? code : code.substring(0, 157) + "...";
    return Refusal.of(Why.UNKNOWN_CODE, "/code", seen, "the code of a finding of the catalogue");
  }
}
