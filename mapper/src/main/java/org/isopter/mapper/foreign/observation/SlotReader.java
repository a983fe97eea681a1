package org.isopter.mapper.foreign.observation;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.side.Sides;
import org.isopter.mapper.foreign.value.Absences;
import org.isopter.mapper.foreign.value.AcuityValues;
import org.isopter.mapper.foreign.value.ForeignValues;
import org.isopter.mapper.foreign.value.Refraction;
import org.isopter.mapper.foreign.value.TestDistance;
import org.isopter.mapper.foreign.vocabulary.Effect;
import org.isopter.mapper.foreign.vocabulary.Meaning;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.AcuityText;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Result;
import org.isopter.model.value.Site;

/** Makes one fact of a place with a code and a value: an observation, or a component of one. */
final class SlotReader {

  private static final String DISTANCE = "distance-acuity";

  /** Notations of what no chart can measure. */
  private static final Set<String> WORDED = Set.of("low-vision", "not-improved");

  private final Vocabulary vocabulary;
  private final Place holder;
  private final Meaning meaning;
  private final List<Place> components;
  private final List<Meaning.Side> sides;
  private final Optional<String> profileNotation;

  SlotReader(
      Vocabulary vocabulary,
      Place holder,
      Meaning meaning,
      List<Place> components,
      List<Meaning.Side> sides,
      Optional<String> profileNotation) {
    this.vocabulary = vocabulary;
    this.holder = holder;
    this.meaning = meaning;
    this.components = components;
    this.sides = sides;
    this.profileNotation = profileNotation;
  }

  /** Takes the fact. */
  Fact<?> read() throws Refusal {
    String name =
        meaning
            .finding()
            .orElseThrow(
                () -> Refusal.of(Why.UNKNOWN_CODE, holder.at() + "/code", "", "a finding"));
    Finding<?> finding = finding(name.equals(Effect.ACUITY) ? DISTANCE : name);
    Site site = Sides.agreed(sides, finding, holder);
    return holder.has("dataAbsentReason")
        ? absent(finding, site)
        : finding.layout().choice().isPresent()
            ? acuity(finding, name.equals(Effect.ACUITY), site)
            : decode(finding, site, plain(finding, site));
  }

  /** Takes the fact that only the components make, of an eye that is known. */
  Fact<?> parts(Finding<?> finding, Site site) throws Refusal {
    return decode(
        finding, site, new EncodedValue(Optional.empty(), Optional.empty(), taken(finding, site)));
  }

  private Finding<?> finding(String name) throws Refusal {
    return vocabulary
        .catalogue()
        .byId(name)
        .orElseThrow(() -> Refusal.of(Why.UNKNOWN_CODE, holder.at() + "/code", name, "a finding"));
  }

  private Fact<?> absent(Finding<?> finding, Site site) throws Refusal {
    if (holder.hasValue()) {
      throw Refusal.of(
          Why.VALUE_UNFIT, holder.at(), "a value and a reason why there is none", "one of them");
    }
    if (meaning.finding().equals(Optional.of(Effect.ACUITY))) {
      holder.ledger().used("acuity-unqualified");
    }
    return Fact.absent(finding, site, new Absences(vocabulary).reason(holder));
  }

  private Fact<?> acuity(Finding<?> known, boolean unqualified, Site site) throws Refusal {
    Map<String, Outcome<Datum>> parts = taken(known, site);
    Optional<String> notation = meaning.notation().or(() -> profileNotation);
    String text = new AcuityValues(vocabulary, holder, notation).take();
    Finding<?> finding = known;
    if (unqualified) {
      holder.ledger().used("acuity-unqualified");
      finding = isPrint(text) ? finding("near-acuity") : known;
    }
    EncodedValue others = new EncodedValue(Optional.empty(), Optional.empty(), parts);
    Result<EncodedValue> chosen = finding.layout().readChoice(text, others);
    if (chosen instanceof Result.Ok<EncodedValue> ok) {
      refuseOtherNotation(ok.value());
      EncodedValue whole = ok.value().with(parts);
      if (finding.id().equals("distance-acuity")) {
        TestDistance.refuseNear(whole, holder);
      }
      return decode(finding, site, whole);
    }
    throw unfit(chosen.faults().get(0));
  }

  /** A code that names a notation holds no value in another, unless there is none to measure. */
  private void refuseOtherNotation(EncodedValue panel) throws Refusal {
    String word = panel.notation().map(Concept::word).orElse("");
    boolean other = meaning.notation().filter(named -> !named.equals(word)).isPresent();
    if (other && !WORDED.contains(word)) {
      throw Refusal.of(
          Why.CODES_DISAGREE, holder.at(), word, "the notation " + meaning.notation().get());
    }
  }

  /** A size of print is said of near vision only. */
  private static boolean isPrint(String text) {
    return AcuityText.parse(text) instanceof Result.Ok<Acuity> ok
        && (ok.value() instanceof Acuity.Points
            || ok.value() instanceof Acuity.Jaeger
            || ok.value() instanceof Acuity.MUnits);
  }

  private EncodedValue plain(Finding<?> finding, Site site) throws Refusal {
    Map<String, Outcome<Datum>> parts = taken(finding, site);
    Optional<Spec> spec = finding.layout().variants().get(0).value();
    if (spec.isPresent()) {
      Datum value = new ForeignValues(vocabulary, holder, meaning.unit()).take(spec.get());
      return new EncodedValue(Optional.empty(), Optional.of(value), parts);
    }
    if (parts.isEmpty()) {
      throw ForeignValues.unfit(holder, "components of " + finding.id());
    }
    return new EncodedValue(Optional.empty(), Optional.empty(), parts);
  }

  private Map<String, Outcome<Datum>> taken(Finding<?> finding, Site site) throws Refusal {
    Map<String, Outcome<Datum>> parts = new LinkedHashMap<>();
    Optional<Place> prism = Optional.empty();
    Optional<Place> base = Optional.empty();
    for (Place component : components) {
      String key = take(component, finding, site, parts);
      prism = key.equals("prism") ? Optional.of(component) : prism;
      base = key.equals("prism-base") ? Optional.of(component) : base;
    }
    Refraction refraction = new Refraction(vocabulary, finding, parts);
    if (prism.isPresent()) {
      refraction.prism(prism.get(), base, site);
    } else if (base.isPresent()) {
      throw Refusal.of(
          Why.PART_UNFIT, base.get().at(), "a base without its prism", "its prism too");
    }
    refraction.zeros(holder);
    for (Map.Entry<String, String> implied : meaning.parts().entrySet()) {
      imply(finding, implied.getKey(), implied.getValue(), parts);
    }
    return parts;
  }

  /** Takes a component that is a part of the finding; returns its key, or nothing. */
  private String take(
      Place component, Finding<?> finding, Site site, Map<String, Outcome<Datum>> parts)
      throws Refusal {
    Optional<PartCode> code = PartCode.of(vocabulary, component, finding);
    if (code.isEmpty()) {
      return "";
    }
    if (code.get().site().filter(named -> named != site).isPresent()) {
      String seen = code.get().site().get().word() + " beside " + site.word();
      throw Refusal.of(Why.SIDES_DISAGREE, component.at() + "/code", seen, "one eye");
    }
    code.get().take();
    Optional<Part<?, ?>> part = code.get().part();
    if (part.isEmpty()) {
      return code.get().key();
    }
    Outcome<Datum> outcome = outcome(component, part.get(), code.get().unit());
    if (parts.putIfAbsent(part.get().key(), outcome) != null) {
      throw Refusal.of(
          Why.PART_UNFIT, component.at(), "a second " + part.get().key(), "one of each");
    }
    return part.get().key();
  }

  private Outcome<Datum> outcome(Place component, Part<?, ?> part, Optional<String> unit)
      throws Refusal {
    if (!component.has("dataAbsentReason")) {
      return Outcome.found(new ForeignValues(vocabulary, component, unit).take(part.spec()));
    }
    if (!part.mayBeAbsent()) {
      throw Refusal.of(Why.PART_UNFIT, component.at(), "no value of " + part.key(), "a value");
    }
    return Outcome.absent(new Absences(vocabulary).reason(component));
  }

  private void imply(Finding<?> finding, String key, String word, Map<String, Outcome<Datum>> parts)
      throws Refusal {
    Optional<Datum> datum =
        Vocabulary.partNamed(finding, key).flatMap(part -> implied(part.spec(), word));
    if (datum.isEmpty()) {
      throw Refusal.of(Why.CODES_DISAGREE, holder.at(), word, "no " + key + " of " + finding.id());
    }
    Outcome<Datum> implied = Outcome.found(datum.get());
    Outcome<Datum> said = parts.putIfAbsent(key, implied);
    if (said != null && !said.equals(implied)) {
      throw Refusal.of(
          Why.CODES_DISAGREE, holder.at(), word + " beside another " + key, "one " + key);
    }
  }

  private static Optional<Datum> implied(Spec spec, String word) {
    if (spec instanceof Spec.Truth) {
      return Optional.of(new Datum.Truth(word.equals("true")));
    }
    return spec instanceof Spec.Coded coded
        ? coded.answers().byWord(word).map(Datum.Coded::new)
        : Optional.empty();
  }

  private <V> Fact<?> decode(Finding<V> finding, Site site, EncodedValue panel) throws Refusal {
    Result<Fact<V>> fact = Fact.decode(finding, site, panel);
    if (fact instanceof Result.Ok<Fact<V>> ok) {
      return ok.value();
    }
    throw unfit(fact.faults().get(0));
  }

  private Refusal unfit(Fault fault) {
    boolean part = !fault.path().isEmpty() && !fault.path().equals(Part.VALUE);
    String seen = part ? fault.path() + " " + fault.seen() : fault.seen();
    return new Refusal(
        part ? Why.PART_UNFIT : Why.VALUE_UNFIT,
        new Fault(holder.at(), seen, fault.wanted(), fault.advice()));
  }
}
