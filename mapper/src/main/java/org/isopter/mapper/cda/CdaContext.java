package org.isopter.mapper.cda;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.isopter.mapper.json.Raw;

/**
 * What the elements around an observation say of it: the names of its sections, and whether it is a
 * finding of the person of the document at all.
 *
 * @param own whether nothing around says that it is of another person, denied, planned or empty
 * @param sections the names of the sections
 */
record CdaContext(boolean own, List<Raw> sections) {

  private static final Set<String> NAMED = Set.of("section", "act");

  private static final Pattern FROM_AFAR =
      Pattern.compile("(?i)\\b(virtual|video|tele\\p{L}*|phone|home)\\b");

  CdaContext {
    sections = List.copyOf(sections);
  }

  /** A document that the person wrote alone is no examination. */
  static CdaContext of(CdaNode document, CdaPeople people) {
    List<CdaNode> authors = document.all("author");
    boolean lay = !authors.isEmpty() && people.testify(document);
    return new CdaContext(!lay && !people.isDead() && !isFromAfar(document), List.of());
  }

  CdaContext in(CdaNode child, CdaPeople people) {
    boolean found =
        child.first("subject").isEmpty()
            && child.isOfSomethingDone()
            && !child.isTakenBack()
            && !people.testify(child);
    List<Raw> all = new ArrayList<>(sections);
    if (NAMED.contains(child.name())) {
      all.addAll(names(child));
    }
    return new CdaContext(own && found, all);
  }

  /** What a virtual visit, or one from home, found is none of an examination. */
  private static boolean isFromAfar(CdaNode document) {
    return document.all("componentOf").stream()
        .flatMap(of -> of.all("encompassingEncounter").stream())
        .flatMap(visit -> visit.all("code").stream())
        .anyMatch(
            code ->
                code.has("code", "VR")
                    || FROM_AFAR.matcher(code.attribute("displayName").orElse("")).find());
  }

  /** A section may be one of goals, of history, of a plan: its name goes with what it holds. */
  private static List<Raw> names(CdaNode section) {
    Optional<CdaNode> code = section.first("code");
    Optional<String> coded = code.flatMap(of -> of.attribute("displayName"));
    String title = section.first("title").map(CdaNode::text).orElse("");
    List<Raw> names = new ArrayList<>();
    if (!title.isEmpty()) {
      names.add(text(title));
    }
    coded.filter(name -> !name.equalsIgnoreCase(title)).ifPresent(name -> names.add(text(name)));
    if (names.isEmpty()) {
      code.flatMap(CdaValue::concept).ifPresent(names::add);
    }
    return names;
  }

  static Raw text(String name) {
    return new Raw.Obj(Map.of("text", Raw.of(name)));
  }

  /** Returns an observation with what is said around it. */
  Raw.Obj around(Raw.Obj observation) {
    Raw.Obj named =
        sections.isEmpty() ? observation : CdaOrganizer.categorised(observation, sections);
    return own ? named : CdaOrganizer.unread(named);
  }
}
