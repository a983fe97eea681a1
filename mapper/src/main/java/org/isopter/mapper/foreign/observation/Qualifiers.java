package org.isopter.mapper.foreign.observation;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.document.Elements;
import org.isopter.mapper.foreign.document.Modifiers;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.vocabulary.CodeText;
import org.isopter.mapper.foreign.vocabulary.Effect;
import org.isopter.mapper.foreign.vocabulary.SideText;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.foreign.vocabulary.Words;
import org.isopter.model.exam.Fact;

/**
 * Refuses an observation beside whose value something stands that is not understood and may change
 * what the value means: a component, an extension, a method or a note.
 */
final class Qualifiers {

  /** Where an extension says nothing of what was found: how it is kept, asked for and shown. */
  private static final Set<String> AROUND =
      Set.of(
          "id",
          "meta",
          "text",
          "language",
          "contained",
          "identifier",
          "subject",
          "basedOn",
          "partOf",
          "encounter",
          "issued",
          "_issued");

  private static final Set<String> LENGTHS =
      Set.of("m", "cm", "mm", "ft", "in", "[ft_i]", "[in_i]");

  private static final Set<String> TEXTS = Set.of("valueString", "valueMarkdown");

  private static final Pattern NAME =
      Pattern.compile("/value(Reference/display|CodeableConcept/(.*/)?(text|display))$");

  private static final String REFRACTION = "refraction";

  /** The parts of a refraction that may be taken for each other. */
  private static final Set<String> POWERS = Set.of("sphere", "cylinder", "axis", "addition");

  private final Vocabulary vocabulary;
  private final Place observation;
  private final ContextCheck context;
  private final ConceptCheck concepts;
  private final NoteCheck notes;
  private final Set<String> understood = new HashSet<>();

  Qualifiers(Vocabulary vocabulary, Place observation) {
    this.vocabulary = vocabulary;
    this.observation = observation;
    this.context = new ContextCheck(vocabulary, observation);
    this.concepts = new ConceptCheck(vocabulary, observation);
    this.notes = new NoteCheck(vocabulary, observation);
  }

  /** Notes that a component is understood, although nothing of it is taken. */
  void understood(Place component) {
    understood.add(component.at());
  }

  /**
   * Notes a component that is named as a finding and was not read. It is understood as a finding of
   * its own, unless it may say how the value beside it was tested.
   *
   * @param name the finding of the observation
   * @param asked the finding of the component
   * @param bare whether the component names no eye and has no number of its own
   */
  void refused(Place component, Optional<String> name, Optional<String> asked, boolean bare) {
    boolean same = name.isPresent() && name.equals(asked);
    boolean acuities = vocabulary.isAcuity(asked) && (name.isEmpty() || vocabulary.isAcuity(name));
    if (!same && !(acuities && bare)) {
      understood(component);
    }
  }

  /**
   * Refuses what may change one of the facts.
   *
   * @param valued whether the observation has a value of its own, to which all components belong;
   *     otherwise a component with a number of its own is a measurement beside the others
   */
  void check(List<Fact<?>> facts, boolean valued) throws Refusal {
    if (!facts.isEmpty()) {
      elements();
    }
    for (Fact<?> fact : facts) {
      components(fact.finding().id(), valued);
      extensions(fact.finding().id(), (at, text) -> notes.checkName(fact, at, text));
      notes.check(fact);
      if (facts.stream().allMatch(other -> other.site() == fact.site())) {
        parts(fact);
      }
    }
    if (!facts.isEmpty()) {
      context.check(facts);
      concepts.check();
      method();
    }
  }

  /** Refuses what may change a part of a refraction that stands alone. */
  void checkPiece() throws Refusal {
    elements();
    components(REFRACTION, true);
    extensions(REFRACTION, (at, text) -> notes.checkNameFor(REFRACTION, at, text));
    context.check(List.of());
    concepts.check();
    notes.checkFor(REFRACTION);
  }

  private void elements() throws Refusal {
    Optional<String> other = Elements.firstOther(observation.value());
    if (other.isPresent()) {
      throw unread(other.get(), "an element that FHIR R4 has not, or not in this shape");
    }
  }

  private void components(String finding, boolean valued) throws Refusal {
    for (Place component : observation.list("component")) {
      if (component.isTaken() && isNamedOtherwise(component, finding)) {
        throw unread(component.at(), "a component whose name says more than its code");
      }
      boolean read = understood.contains(component.at()) || component.isTaken();
      if (isUndecided(component, finding)) {
        throw unread(component.at(), "a condition of which nobody knows whether it held");
      }
      boolean apart = !component.hasValue() || (!valued && isMeasurement(component));
      if (!read && !apart && !isHarmless(component, finding)) {
        throw unread(component.at(), "a component that is not understood");
      }
    }
  }

  /** Of facts of both eyes the parts stand under the names of either. */
  private void parts(Fact<?> fact) throws Refusal {
    for (Place component : observation.list("component")) {
      if (component.isTaken() && PartCode.of(vocabulary, component, fact.finding()).isPresent()) {
        notes.checkPart(fact, component);
      }
    }
  }

  private boolean isNamedOtherwise(Place component, String finding) {
    Words words = vocabulary.habits().words();
    Optional<String> part =
        vocabulary
            .catalogue()
            .byId(finding)
            .flatMap(known -> PartCode.of(vocabulary, component, known))
            .filter(PartCode::isCoded)
            .map(PartCode::key)
            .filter(POWERS::contains);
    return component.child("code").stream()
        .flatMap(code -> Stream.concat(Stream.of(code.text("text")), displays(code)))
        .anyMatch(
            name ->
                (words.otherwiseNamed(name, finding).isPresent() && !isOfAnother(name, finding))
                    || (part.isPresent()
                        && (!vocabulary.isFamiliar(name) || isOfAnotherPart(name, part.get()))));
  }

  /** The whole name of another finding says nothing of this one, whatever its words are. */
  private boolean isOfAnother(String name, String finding) {
    return vocabulary
        .titled(SideText.without(name))
        .flatMap(Effect::finding)
        .filter(other -> !other.equals(finding))
        .isPresent();
  }

  private boolean isOfAnotherPart(String name, String part) {
    Optional<String> named =
        vocabulary
            .habits()
            .words()
            .part(CodeText.words(SideText.without(Vocabulary.withoutTag(name))));
    return named.filter(POWERS::contains).filter(other -> !other.equals(part)).isPresent();
  }

  private Stream<String> displays(Place code) {
    return code.list("coding").stream()
        .filter(c -> !isItsName(c))
        .map(coding -> coding.text("display"));
  }

  private boolean isItsName(Place coding) {
    return vocabulary
        .display(coding.text("system") + "|" + coding.text("code"))
        .filter(name -> Vocabulary.sameName(name, coding.text("display")))
        .isPresent();
  }

  /** Whether something was through a pinhole is not known where the reason says no more. */
  private boolean isUndecided(Place component, String finding) {
    Optional<Place> reason = component.child("dataAbsentReason");
    return reason.isPresent()
        && !component.hasValue()
        && reason.get().list("coding").stream().noneMatch(this::isNot)
        && component.child("code").stream()
            .flatMap(code -> code.list("coding").stream())
            .flatMap(
                coding ->
                    vocabulary.effect(coding.text("system") + "|" + coding.text("code")).stream())
            .anyMatch(effect -> isOfAnother(effect, finding));
  }

  private boolean isOfAnother(Effect effect, String finding) {
    boolean question = effect.rule().equals(RuleId.CONDITION_CODED);
    boolean same =
        effect.finding().map(f -> f.equals(finding) || f.equals(Effect.ACUITY)).orElse(true);
    return question && !same && vocabulary.isAcuity(Optional.of(finding));
  }

  private boolean isNot(Place reason) {
    String token = reason.text("system") + "|" + reason.text("code");
    return vocabulary
        .habits()
        .absence(token)
        .filter(word -> word.equals("not-done") || word.equals("not-applicable"))
        .isPresent();
  }

  private static boolean isMeasurement(Place component) {
    Optional<Place> quantity = component.child("valueQuantity");
    return quantity
        .filter(q -> !LENGTHS.contains(q.text("code")) && !LENGTHS.contains(q.text("unit")))
        .isPresent();
  }

  private boolean isHarmless(Place component, String finding) {
    Words words = vocabulary.habits().words();
    Optional<Place> code = component.child("code");
    boolean text =
        code.map(c -> CodeText.words(c.text("text")))
            .filter(name -> isHarmless(words, name, finding))
            .isPresent();
    return text
        || code.map(c -> c.list("coding")).orElse(List.of()).stream()
            .anyMatch(
                coding ->
                    isHarmless(words, coding.text("system") + "|" + coding.text("code"), finding)
                        || isHarmless(words, CodeText.words(coding.text("display")), finding));
  }

  private static boolean isHarmless(Words words, String name, String finding) {
    boolean derived = finding.equals(REFRACTION) && words.isDerivedPart(name);
    return derived || words.isHarmless(name, finding);
  }

  private void method() throws Refusal {
    Optional<Place> method = observation.child("method");
    if (method.isPresent() && !method.get().isTaken()) {
      throw unread(method.get().at(), "a method that is not understood");
    }
  }

  private void extensions(String finding, Reader texts) throws Refusal {
    if (!Modifiers.mayHold(observation.value(), "extension")) {
      return;
    }
    for (Place member : observation.children()) {
      if (!AROUND.contains(member.step())) {
        extensions(member, finding, texts);
      }
    }
  }

  private void extensions(Place element, String finding, Reader texts) throws Refusal {
    boolean extension = element.step().equals("extension");
    for (Place child : element.children()) {
      if (!extension) {
        extensions(child, finding, texts);
      } else if (!child.isTaken()) {
        if (!isHarmlessExtension(child, finding)) {
          throw unread(child.at(), "an extension that is not understood");
        }
        readTexts(child, texts);
      }
    }
  }

  /** A translation, or a text as it was shown, may say something else than what it stands for. */
  private void readTexts(Place extension, Reader texts) throws Refusal {
    Words words = vocabulary.habits().words();
    for (Place child : extension.children()) {
      String text = child.value().string().orElse("");
      if (TEXTS.contains(child.step())) {
        texts.read(child.at(), text);
      }
      if (NAME.matcher(child.at()).find()) {
        texts.read(child.at(), text);
        if (words.changesAll(text).isPresent()) {
          throw unread(child.at(), "a place or a person that is not understood");
        }
      }
      readTexts(child, texts);
    }
  }

  private boolean isHarmlessExtension(Place extension, String finding) {
    String url = extension.value().string("url").orElse("");
    return vocabulary.habits().words().isHarmless(url, finding);
  }

  /** Reads a text at a place. */
  private interface Reader {
    void read(String at, String text) throws Refusal;
  }

  /** Returns the refusal of something that may change a value. */
  static Refusal unread(String at, String seen) {
    return Refusal.of(Why.UNREAD_QUALIFIER, at, seen, "only what is known, or known as harmless");
  }
}
