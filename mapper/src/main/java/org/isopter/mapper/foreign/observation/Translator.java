package org.isopter.mapper.foreign.observation;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.foreign.document.Head;
import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.foreign.document.TimeBeside;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.side.SideWords;
import org.isopter.mapper.foreign.side.Sides;
import org.isopter.mapper.foreign.value.ForeignValues;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.Effect;
import org.isopter.mapper.foreign.vocabulary.Meaning;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Status;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Site;

/**
 * Translates one observation into facts, as far as it is safe, and gives every reason where not.
 */
public final class Translator {

  private final Vocabulary vocabulary;
  private final Options options;
  private final Neighbours neighbours;
  private final Ledger ledger;
  private final Place observation;
  private final MethodAndNotes methodAndNotes;
  private final Gathering gathering;
  private final Qualifiers qualifiers;
  private final Optional<TimeBeside> beside;
  private Optional<Translation.Piece> piece = Optional.empty();

  /** Whether the observation has a value of its own, and no mere panel of components. */
  private boolean valued;

  private Translator(
      Vocabulary vocabulary,
      Options options,
      Neighbours neighbours,
      Raw resource,
      Optional<Raw.Obj> report) {
    this.vocabulary = vocabulary;
    this.options = options;
    this.neighbours = neighbours;
    this.ledger = new Ledger(resource);
    this.observation = ledger.root();
    this.methodAndNotes = new MethodAndNotes(vocabulary, observation);
    this.gathering = new Gathering(ledger, methodAndNotes);
    this.qualifiers = new Qualifiers(vocabulary, observation);
    this.beside =
        TimeBeside.of(observation, neighbours, report, options.zone(), options.performed());
  }

  /**
   * Translates an observation.
   *
   * @param report the report that names it
   */
  public static Translation of(
      Vocabulary vocabulary,
      Options options,
      Neighbours neighbours,
      Raw resource,
      Optional<Raw.Obj> report) {
    return new Translator(vocabulary, options, neighbours, resource, report).translate();
  }

  /** Says whether the code of an observation names a finding, or a part of a refraction. */
  public static boolean names(Vocabulary vocabulary, Neighbours neighbours, Raw observation) {
    Place root = new Ledger(observation).root();
    try {
      Qualifiers qualifiers = new Qualifiers(vocabulary, root);
      Meaning meaning = new Conditions(vocabulary, neighbours, qualifiers).of(root);
      return meaning.finding().isPresent()
          || meaning.statement().isPresent()
          || meaning.isGroup()
          || new Pieces(vocabulary, root).isPiece(root);
    } catch (Refusal contradicting) {
      return true;
    }
  }

  private Translation translate() {
    Optional<Head> head = Optional.empty();
    Optional<List<Meaning.Side>> around = Optional.empty();
    try {
      Head.guard(observation);
      around = gathering.attempt(() -> Sides.of(vocabulary, observation, neighbours));
      head = head();
      root(around.orElse(List.of()));
      if (around.isPresent()) {
        qualifiers.check(gathering.facts(), valued);
      }
      if (piece.isPresent()) {
        qualifiers.checkPiece();
      }
      if (piece.isPresent() || !gathering.facts().isEmpty()) {
        new ReferencedCheck(vocabulary, observation, neighbours).check();
      }
    } catch (Refusal refusal) {
      gathering.refused(refusal);
    }
    List<Reason> reasons = gathering.reasons(around.isEmpty());
    List<Fact<?>> facts = gathering.facts();
    if (reasons.stream().anyMatch(reason -> reason.why() == Why.UNREAD_QUALIFIER)) {
      return Translation.kept(ledger, reasons);
    }
    if (head.isEmpty() || around.isEmpty() || (facts.isEmpty() && piece.isEmpty())) {
      return Translation.kept(ledger, reasons);
    }
    if (!facts.isEmpty()) {
      Frame.take(observation, facts);
    }
    return new Translation(head, timed(facts), ledger, reasons, piece, Optional.empty());
  }

  /** Returns the facts with the remark that their time is not their own. */
  private List<Fact<?>> timed(List<Fact<?>> facts) {
    if (beside.isEmpty()) {
      return facts;
    }
    List<Fact<?>> timed = new ArrayList<>();
    for (Fact<?> fact : facts) {
      List<String> remarks = new ArrayList<>(fact.remarks());
      remarks.add(beside.get().remark());
      timed.add(fact.remarks(remarks));
    }
    return timed;
  }

  private Optional<Head> head() {
    Optional<Status> status = gathering.attempt(() -> Head.status(observation));
    Optional<OffsetDateTime> time = beside.map(TimeBeside::at);
    if (time.isEmpty()) {
      time = gathering.attempt(() -> Head.time(observation, options.zone()));
    }
    beside.ifPresent(other -> ledger.used(other.rule()));
    Optional<Party> subject = gathering.attempt(() -> Head.subject(observation, neighbours));
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
    Conditions conditions = new Conditions(vocabulary, neighbours, qualifiers);
    Meaning meaning = conditions.of(observation);
    List<Place> components = new ArrayList<>();
    for (Place component : observation.list("component")) {
      if (!conditions.question(component, meaning)) {
        components.add(component);
      }
    }
    Optional<String> name = meaning.finding();
    if (!components.isEmpty()) {
      conditions.refuseOtherwise(observation, meaning);
    }
    if (name.isPresent()) {
      conditions.around(observation, meaning);
    }
    Pieces pieces = new Pieces(vocabulary, observation);
    if (name.isEmpty() && components.isEmpty() && pieces.isPiece(observation)) {
      piece = gathering.attempt(() -> pieces.alone(around));
      return;
    }
    List<Place> apart = pieces.apart(components, meaning);
    components.removeAll(apart);
    eyes(pieces, apart, meaning, around);
    values(pieces, conditions, meaning, components, around, !apart.isEmpty());
  }

  private void values(
      Pieces pieces,
      Conditions conditions,
      Meaning meaning,
      List<Place> components,
      List<Meaning.Side> around,
      boolean eyes)
      throws Refusal {
    Optional<String> name = meaning.finding();
    List<Place> own = components(components, name);
    valued = hasValue(observation) || !own.isEmpty();
    List<Place> others = new ArrayList<>(components);
    others.removeAll(own);
    boolean panel = !valued && (eyes || isPanel(others));
    boolean stated =
        meaning.statement().isPresent() || (meaning.isGroup() && hasValue(observation));
    if (eyes || name.equals(Optional.of("refraction"))) {
      pieces.refuseUnread(others);
    }
    int before = gathering.count();
    List<Place> ofEyes = valued ? List.of() : EyeComponents.of(vocabulary, others);
    if (name.isPresent() && !ofEyes.isEmpty()) {
      others.removeAll(ofEyes);
      for (Place component : ofEyes) {
        List<Meaning.Side> eye = EyeComponents.sides(vocabulary, component, around);
        Meaning asked = EyeComponents.meaning(vocabulary, component, meaning);
        if (slot(component, asked, List.of(), eye)) {
          EyeComponents.take(vocabulary, component);
        }
      }
    } else if (name.isPresent() ? !panel : stated) {
      slot(observation, meaning, own, around);
    } else if (!meaning.isGroup() && hasValue(observation)) {
      throw unknown();
    }
    others(conditions, others, around, name);
    if (!eyes && gathering.count() == before && (name.isEmpty() || panel)) {
      throw nothing(meaning, name.isPresent());
    }
  }

  /** Makes a refraction of the parts of each eye. */
  private void eyes(Pieces pieces, List<Place> apart, Meaning meaning, List<Meaning.Side> around) {
    Ledger.Mark mark = ledger.mark();
    Optional<Map<Site, List<Place>>> byEye = gathering.attempt(() -> pieces.byEye(apart, around));
    if (byEye.isEmpty()) {
      ledger.backTo(mark);
    }
    for (Map.Entry<Site, List<Place>> eye : byEye.orElse(Map.of()).entrySet()) {
      gathering.taking(() -> List.of(pieces.joined(eye.getValue(), eye.getKey())), meaning);
    }
  }

  private void others(
      Conditions conditions,
      List<Place> components,
      List<Meaning.Side> around,
      Optional<String> name) {
    Set<String> named = conditions.named(components);
    for (Place component : components) {
      Ledger.Mark mark = ledger.mark();
      Optional<Meaning> meaning = gathering.attempt(() -> conditions.of(component, named));
      if (meaning.isPresent() && isFinding(meaning.get())) {
        if (slot(component, meaning.get(), List.of(), around)) {
          ledger.used(RuleId.CODE_COMPONENT);
          if (valued && isSecond(meaning.get(), name)) {
            gathering.refused(Qualifiers.unread(component.at(), "a second value of the finding"));
          }
        } else {
          ledger.backTo(mark);
          Optional<String> asked = gathering.attempt(meaning.get()::finding).flatMap(f -> f);
          boolean counted = gathering.lastReason().filter(Why::isOfNumber).isPresent();
          qualifiers.refused(component, name, asked, meaning.get().sides().isEmpty() && !counted);
        }
      } else {
        ledger.backTo(mark);
      }
    }
  }

  /** Nobody can say of two values of one finding at one eye which was found. */
  private boolean isSecond(Meaning meaning, Optional<String> name) {
    return meaning.sides().isEmpty()
        && name.isPresent()
        && gathering.attempt(meaning::finding).flatMap(f -> f).equals(name);
  }

  private boolean isFinding(Meaning meaning) {
    return meaning.statement().isPresent()
        || gathering.attempt(meaning::finding).flatMap(finding -> finding).isPresent();
  }

  /** Takes the facts of a place; says whether there are any. */
  private boolean slot(
      Place holder, Meaning meaning, List<Place> parts, List<Meaning.Side> around) {
    return gathering.taking(
        () -> {
          ForeignValues.refuseSecond(holder);
          List<Meaning.Side> sides = SideWords.all(ledger, holder, observation, meaning, around);
          WholeStatement stated = new WholeStatement(vocabulary, holder, meaning, sides);
          if (meaning.finding().isEmpty() || meaning.statement().isPresent()) {
            return stated.take();
          }
          Optional<String> profile = methodAndNotes.profileNotation();
          SlotReader coded = new SlotReader(vocabulary, holder, meaning, parts, sides, profile);
          return Slots.read(coded, stated, ledger, parts.isEmpty());
        },
        meaning);
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

  private Refusal nothing(Meaning meaning, boolean named) {
    if (named) {
      return noValue();
    }
    return meaning.isGroup() && observation.has("hasMember") ? Pieces.onlyMembers() : unknown();
  }

  private Refusal unknown() {
    String code = observation.child("code").map(c -> RawJson.write(c.value())).orElse("no code");
    String seen = code.length() <= 160 ? code : code.substring(0, 157) + "...";
    return Refusal.of(Why.UNKNOWN_CODE, "/code", seen, "the code of a finding of the catalogue");
  }
}
