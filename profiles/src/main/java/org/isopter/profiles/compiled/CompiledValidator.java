package org.isopter.profiles.compiled;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Canonical;
import org.isopter.model.wire.BaseElements;
import org.isopter.model.wire.Element;
import org.isopter.model.wire.ExaminationElements;
import org.isopter.model.wire.FindingElements;

/**
 * Judges resources and bundles of FHIR R4 by the profiles of a catalogue, each compiled once.
 *
 * <p>It knows of the standard only what is written here. Whatever else a resource holds leaves it
 * undecided: then the reference validator must be asked. Safe for use by several threads.
 */
public final class CompiledValidator {

  private final Standard standard = Standard.read();
  private final Map<String, List<ElementCheck>> profiles = new HashMap<>();
  private final Terms terms;

  /** Compiles the profiles of a catalogue. */
  public CompiledValidator(Catalogue catalogue) {
    Objects.requireNonNull(catalogue, "catalogue");
    Element base = BaseElements.make();
    Element panel = ExaminationElements.make();
    List<Element> all = new ArrayList<>(List.of(base, panel));
    add(ExamCodes.PANEL.code(), List.of(panel));
    for (Finding<?> finding : catalogue.all()) {
      Element own = FindingElements.of(finding);
      all.add(own);
      add(finding.id(), List.of(base, own));
    }
    this.terms = new Terms(all);
  }

  private void add(String id, List<Element> elements) {
    profiles.put(
        Canonical.profile(id),
        elements.stream().map(element -> new ElementCheck(element, element.name())).toList());
  }

  /**
   * Judges a resource or a bundle.
   *
   * @param json the resource as JSON
   */
  public Verdict judge(String json) {
    try {
      return judge(ItemParser.read(standard, json));
    } catch (Unknown unknown) {
      return new Verdict.Undecided(String.valueOf(unknown.getMessage()));
    }
  }

  private Verdict judge(Item root) {
    Judgement report = new Judgement();
    profiles(root, report);
    for (Item entry : root.members("entry")) {
      entry.members("resource").forEach(resource -> profiles(resource, report));
    }
    new Doubts(terms, root).find(root, report);
    return report.verdict();
  }

  private void profiles(Item resource, Judgement report) {
    List<String> claimed = claimed(resource);
    if (resource.type().equals("Observation") == claimed.isEmpty()) {
      throw new Unknown(resource.type() + " of " + claimed.size() + " profiles");
    }
    for (String url : claimed) {
      List<ElementCheck> checks = profiles.get(url);
      if (checks == null) {
        throw new Unknown("the profile " + url);
      }
      checks.forEach(check -> check.check(resource, report));
    }
  }

  private static List<String> claimed(Item resource) {
    return resource.members("meta").stream()
        .flatMap(meta -> meta.members("profile").stream())
        .map(Item::text)
        .distinct()
        .toList();
  }
}
