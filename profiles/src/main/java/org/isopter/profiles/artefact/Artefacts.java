package org.isopter.profiles.artefact;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.hl7.fhir.r4.model.MetadataResource;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.finding.Finding;
import org.isopter.profiles.artefact.invariant.Invariant;

/** The conformance resources of a catalogue, and the invariants that its profiles state. */
public final class Artefacts {

  private final List<MetadataResource> resources = new ArrayList<>();
  private final Map<String, Invariant> invariants = new LinkedHashMap<>();

  private Artefacts(Catalogue catalogue) {
    resources.add(BaseProfile.make());
    BaseProfile.INVARIANTS.forEach(this::add);
    resources.add(ExaminationProfile.make());
    ExaminationProfile.invariants().forEach(this::add);
    resources.addAll(CarriedExtensions.make());
    catalogue.all().forEach(this::add);
    AnswerLists lists = new AnswerLists(catalogue);
    resources.addAll(ValueSets.of(catalogue, lists));
    resources.addAll(CodeSystems.of(new CodeUses(catalogue, lists)));
    resources.add(SiteMap.make());
    resources.add(Guide.of(List.copyOf(resources)));
  }

  /**
   * Returns the artefacts of a catalogue.
   *
   * @throws IllegalArgumentException when two of its lists or codes contradict each other
   */
  public static Artefacts of(Catalogue catalogue) {
    return new Artefacts(catalogue);
  }

  /** Returns the resources: profiles, value sets, code systems, the map, the guide. */
  public List<MetadataResource> resources() {
    return List.copyOf(resources);
  }

  /** Returns the invariants by their key. */
  public Map<String, Invariant> invariants() {
    return Map.copyOf(invariants);
  }

  private void add(Finding<?> finding) {
    FindingProfile.Stated stated = FindingProfile.of(finding);
    resources.add(stated.profile());
    stated.invariants().forEach(this::add);
  }

  private void add(Invariant invariant) {
    if (invariants.putIfAbsent(invariant.key(), invariant) != null) {
      throw new IllegalArgumentException("two invariants are called " + invariant.key());
    }
  }
}
