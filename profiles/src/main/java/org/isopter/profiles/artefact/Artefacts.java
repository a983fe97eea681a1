package org.isopter.profiles.artefact;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.hl7.fhir.r4.model.MetadataResource;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.wire.Condition;

/** The conformance resources of a catalogue, and the invariants that its profiles state. */
public final class Artefacts {

  private final List<MetadataResource> resources = new ArrayList<>();
  private final Map<String, Condition.Rule> rules;

  private Artefacts(Catalogue catalogue) {
    Profiles profiles = new Profiles(catalogue);
    rules = profiles.rules();
    resources.addAll(profiles.all());
    AnswerLists lists = new AnswerLists(catalogue);
    CodeUses uses = new CodeUses(catalogue, lists);
    resources.addAll(ValueSets.of(catalogue, lists, uses));
    resources.addAll(CodeSystems.of(uses));
    resources.add(SiteMap.make());
    resources.add(FormQuestionnaire.of(catalogue));
    resources.add(ServerNeeds.search());
    resources.add(ServerNeeds.capabilities(profiles.all()));
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

  /** Returns the resources: profiles, terminology, the form, what a server needs, the guide. */
  public List<MetadataResource> resources() {
    return List.copyOf(resources);
  }

  /** Returns the rules of the profiles by their key. */
  public Map<String, Condition.Rule> rules() {
    return rules;
  }
}
