package org.isopter.mapper.foreign.side;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.Meaning;
import org.isopter.mapper.foreign.vocabulary.SideText;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Site;

/** Finds the eye that an observation is about, in every way in which it may be said. */
public final class Sides {

  private static final String STRUCTURE_EXTENSION =
      "http://hl7.org/fhir/StructureDefinition/bodySite";

  private final Vocabulary vocabulary;
  private final Place observation;
  private final Neighbours neighbours;
  private final List<Meaning.Side> said = new ArrayList<>();
  private final SideCodes codes;
  private final Laterality laterality;

  private Sides(Vocabulary vocabulary, Place observation, Neighbours neighbours) {
    this.vocabulary = vocabulary;
    this.observation = observation;
    this.neighbours = neighbours;
    this.codes = new SideCodes(vocabulary, said);
    this.laterality = new Laterality(vocabulary, codes);
  }

  /**
   * Takes what an observation says of the eye apart from its code.
   *
   * @throws Refusal when a side is not understood, or several disagree
   */
  public static List<Meaning.Side> of(
      Vocabulary vocabulary, Place observation, Neighbours neighbours) throws Refusal {
    Sides sides = new Sides(vocabulary, observation, neighbours);
    Optional<Place> site = observation.child("bodySite");
    if (site.isPresent()) {
      sides.bodySite(site.get());
      sides.structureReference(site.get());
    }
    sides.laterality.of(observation);
    Optional<Place> structure = observation.child("bodyStructure");
    if (structure.isPresent()) {
      sides.structure(structure.get());
    }
    return sides.said;
  }

  /**
   * Returns the one eye that all statements name and that the finding may be about.
   *
   * @throws Refusal when they disagree
   */
  public static Site agreed(List<Meaning.Side> said, Finding<?> finding, Place at) throws Refusal {
    Optional<Site> one = one(said, at);
    Site site = one.isEmpty() ? ofPair(finding, at) : one.get();
    if (!finding.sites().contains(site)) {
      String wanted =
          finding.sites().equals(Site.PAIR)
              ? "both eyes: " + finding.id() + " compares them, and its value names the eye"
              : finding.sites().stream().map(Site::word).collect(Collectors.joining(" or "))
                  + " for "
                  + finding.id();
      throw Refusal.of(Why.NO_SIDE, at.at(), site.word(), wanted);
    }
    return site;
  }

  /**
   * Returns the one eye that all statements name; empty where there is no statement.
   *
   * @throws Refusal when it is not understood
   */
  public static Optional<Site> one(List<Meaning.Side> said, Place at) throws Refusal {
    Set<Site> sites = said.stream().map(Meaning.Side::site).collect(Collectors.toSet());
    if (sites.size() > 1) {
      throw Refusal.of(
          Why.SIDES_DISAGREE,
          at.at(),
          said.stream()
              .map(s -> s.site().word() + " at " + s.at())
              .collect(Collectors.joining(", ")),
          "one eye");
    }
    return sites.stream().findFirst();
  }

  private static Site ofPair(Finding<?> finding, Place at) throws Refusal {
    if (finding.sites().equals(Site.PAIR)) {
      at.ledger().used(RuleId.SIDE_OF_PAIR);
      return Site.BOTH;
    }
    throw Refusal.of(Why.NO_SIDE, at.at(), "no eye", "right, left or both eyes");
  }

  private void bodySite(Place site) throws Refusal {
    boolean eye = false;
    List<Place> unknown = new ArrayList<>();
    for (Place place : site.list("coding")) {
      Coding coding = Coding.single(place, codes::isSite, vocabulary);
      boolean known =
          codes.site(coding)
              || codes.qualifier(coding, RuleId.SIDE_QUALIFIER)
              || codes.expression(coding)
              || codes.localCode(place);
      eye |= known || codes.eitherEye(coding);
      if (!known && !codes.eitherEye(coding)) {
        unknown.add(place);
      }
    }
    laterality.extensions(site);
    site.list("coding").forEach(laterality::extensions);
    boolean structured = !site.list("extension").isEmpty();
    if (!eye && !unknown.isEmpty() && !structured && !isNamed(site, unknown)) {
      throw Refusal.of(
          Why.NOT_AN_EYE,
          unknown.get(0).at(),
          RawJson.write(unknown.get(0).value()),
          "the code of an eye");
    }
  }

  /** Beside a code that is not known, "right" alone may be the right of anything. */
  private static boolean isNamed(Place site, List<Place> unknown) {
    return !SideText.in(site.text("text")).isEmpty()
        || site.list("coding").stream().anyMatch(c -> !SideText.in(c.text("display")).isEmpty())
        || unknown.stream().allMatch(c -> SideText.alone(c.text("display")).isPresent());
  }

  private void structureReference(Place site) throws Refusal {
    for (Place extension : site.list("extension")) {
      boolean structure = extension.text("url").equals(STRUCTURE_EXTENSION);
      Optional<Place> reference = extension.child("valueReference");
      if (structure && reference.isPresent()) {
        structure(reference.get());
        extension.take(RuleId.SIDE_STRUCTURE, "url");
      }
    }
  }

  private void structure(Place reference) throws Refusal {
    String to = reference.text("reference");
    Optional<Raw.Obj> target = neighbours.find(observation.value(), to);
    if (target.isEmpty()) {
      throw Refusal.of(
          Why.NO_SIDE, reference.at(), "\"" + to + "\"", "a body structure in the same document");
    }
    refuseAnother(target.get(), reference);
    Set<Site> sites = sitesOf(target.get());
    String described = target.get().string("description").orElse("");
    sites.addAll(SideText.in(described));
    if (sites.isEmpty()) {
      throw Refusal.of(
          Why.NO_SIDE, reference.at(), to + " without a side", "a body structure of one eye");
    }
    reference.take(RuleId.SIDE_STRUCTURE, "reference");
    sites.forEach(s -> said.add(new Meaning.Side(s, reference.at(), RuleId.SIDE_STRUCTURE)));
  }

  private void refuseAnother(Raw.Obj structure, Place reference) throws Refusal {
    boolean inactive =
        structure.get("active").filter(new Raw.Leaf(Raw.Kind.TRUTH, "false")::equals).isPresent();
    if (inactive || neighbours.differ(structure, "patient", observation.value(), "subject")) {
      throw Refusal.of(
          Why.NO_SIDE, reference.at(), "one of another person, or withdrawn", "one of the person");
    }
  }

  /** R4 has location and qualifiers, R5 has structures that are included. */
  private Set<Site> sitesOf(Raw.Obj structure) {
    Set<Site> sites = new LinkedHashSet<>(sites(structure.object("location")));
    for (Raw.Obj qualifier : structure.objects("locationQualifier")) {
      sites.addAll(sites(Optional.of(qualifier)));
    }
    for (Raw.Obj included : structure.objects("includedStructure")) {
      sites.addAll(sites(included.object("structure")));
      sites.addAll(sites(included.object("laterality")));
    }
    return sites;
  }

  private Set<Site> sites(Optional<? extends Raw> concept) {
    Set<Site> sites = new LinkedHashSet<>();
    for (Raw.Obj coding : concept.map(c -> c.objects("coding")).orElse(List.of())) {
      String token = coding.string("system").orElse("") + "|" + coding.string("code").orElse("");
      vocabulary.habits().site(token).ifPresent(sites::add);
      vocabulary.habits().qualifier(token).ifPresent(sites::add);
    }
    return sites;
  }
}
