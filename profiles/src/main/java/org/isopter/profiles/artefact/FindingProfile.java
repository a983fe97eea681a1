package org.isopter.profiles.artefact;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.ElementDefinition;
import org.hl7.fhir.r4.model.ElementDefinition.DiscriminatorType;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.isopter.model.finding.Choice;
import org.isopter.model.finding.Codes;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Code;
import org.isopter.profiles.artefact.invariant.CodeInvariants;
import org.isopter.profiles.artefact.invariant.Invariant;
import org.isopter.profiles.artefact.invariant.LayoutInvariants;
import org.isopter.profiles.artefact.invariant.Parts;
import org.isopter.profiles.artefact.invariant.ValueInvariants;

/** Makes the profile of one finding. */
final class FindingProfile {

  private static final String CODING = "Observation.code.coding";
  private static final String COMPONENT = "Observation.component";

  private final Finding<?> finding;
  private final StructureDefinition profile;
  private final Differential differential;
  private final ValueElements values;
  private final List<Invariant> invariants = new ArrayList<>();

  private FindingProfile(Finding<?> finding) {
    this.finding = finding;
    this.profile =
        BaseProfile.start(finding.id(), finding.title(), Canonical.profile(BaseProfile.ID));
    this.differential = new Differential(profile);
    this.values = new ValueElements(differential);
  }

  /** Returns the profile and the invariants that it states. */
  static Stated of(Finding<?> finding) {
    return new FindingProfile(finding).make();
  }

  /** A profile and the invariants that it states. */
  record Stated(StructureDefinition profile, List<Invariant> invariants) {}

  private Stated make() {
    profile.setDescription((finding.title() + ". " + finding.note()).strip());
    profile.setCopyright(Metadata.notices(finding.codes().all()));
    state(differential.at("Observation"), CodeInvariants.of(finding), LayoutInvariants.of(finding));
    codes(finding.codes());
    value();
    method();
    components();
    return new Stated(profile, invariants);
  }

  private void codes(Codes codes) {
    ElementDefinition coding = differential.sliced(CODING, DiscriminatorType.PATTERN, "$this");
    coding.setMin(codes.general().size());
    codes.refined().forEach(this::refined);
    codes.bySite().forEach((site, code) -> code(site.word(), code, 0));
    for (int i = 0; i < codes.general().size(); i++) {
      code(i == 0 ? "any-side" : "any-side-" + (i + 1), codes.general().get(i), 1);
    }
  }

  private void refined(Codes.Refined refined) {
    String name = refined.when().name();
    if (refined.isSided()) {
      refined.bySite().forEach((site, code) -> code(name + "-" + site.word(), code, 0));
    } else {
      code(name, refined.codes().get(0), 0);
    }
  }

  private void code(String slice, Code code, int least) {
    String id = CODING + ":" + slice;
    differential.at(id).setMin(least).setMax("1").setPattern(Differential.coding(code));
  }

  private void value() {
    List<Spec> specs =
        finding.layout().variants().stream().flatMap(v -> v.value().stream()).toList();
    if (specs.isEmpty()) {
      differential.none("Observation.value[x]");
    } else if (specs.size() == 1) {
      values.one("Observation", specs.get(0), 0);
    } else {
      values.choice("Observation", specs, ValueSets.ofValue(finding));
    }
  }

  private void method() {
    if (finding.methods().isEmpty()) {
      differential.none("Observation.method");
      return;
    }
    Differential.bind(differential.at("Observation.method"), finding.methods().get().id());
    differential.oneCoding("Observation.method");
  }

  private void components() {
    Optional<? extends Choice<?, ?>> choice = finding.layout().choice();
    List<Part<?, ?>> parts = List.copyOf(Parts.of(finding.layout()).values());
    if (choice.isEmpty() && parts.isEmpty()) {
      differential.none(COMPONENT);
      return;
    }
    differential.sliced(COMPONENT, DiscriminatorType.PATTERN, "code");
    choice.ifPresent(this::notation);
    parts.forEach(this::part);
  }

  private void notation(Choice<?, ?> choice) {
    component(choice.key(), choice.code());
    values.one(COMPONENT + ":" + choice.key(), new Spec.Coded(choice.notations()), 1);
    differential.none(COMPONENT + ":" + choice.key() + ".dataAbsentReason");
  }

  private void part(Part<?, ?> part) {
    String id = COMPONENT + ":" + part.key();
    String prefix = finding.id() + "-" + part.key();
    List<Invariant> own = ValueInvariants.of(prefix, part.key(), part.spec());
    ElementDefinition component = component(part.key(), part.code());
    values.one(id, part.spec(), part.mayBeAbsent() ? 0 : 1);
    if (part.mayBeAbsent()) {
      state(component, own, List.of(outcome(prefix, part)));
      Differential.bind(differential.at(id + ".dataAbsentReason"), ValueSets.ABSENT_REASON);
      differential.oneCoding(id + ".dataAbsentReason");
    } else {
      state(component, own);
      differential.none(id + ".dataAbsentReason");
    }
  }

  private ElementDefinition component(String key, Code code) {
    String id = COMPONENT + ":" + key;
    ElementDefinition component = differential.at(id).setMin(0).setMax("1");
    differential.at(id + ".code").setPattern(Differential.concept(code));
    return component;
  }

  private static Invariant outcome(String prefix, Part<?, ?> part) {
    return Invariant.of(
        prefix + "-outcome",
        part.key() + " has a value or the reason why there is none, and not both",
        "value.exists() != dataAbsentReason.exists()",
        "value",
        "dataAbsentReason.coding");
  }

  @SafeVarargs
  private void state(ElementDefinition element, List<Invariant>... groups) {
    for (List<Invariant> group : groups) {
      differential.state(element, group);
      invariants.addAll(group);
    }
  }
}
