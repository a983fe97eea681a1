package org.isopter.mapper.cda;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.json.Raw;

/**
 * What the elements around an observation say of it: the names of its sections, and whether it is a
 * finding of the person of the document at all.
 *
 * @param own whether nothing around says that it is of another person, denied, planned or empty
 * @param sections the names of the sections
 */
record CdaContext(boolean own, List<Raw> sections) {

  CdaContext {
    sections = List.copyOf(sections);
  }

  /** A document that the person wrote alone is no examination. */
  static CdaContext of(CdaNode document, CdaPeople people) {
    List<CdaNode> authors = document.all("author");
    boolean lay = !authors.isEmpty() && people.testify(document);
    return new CdaContext(!lay, List.of());
  }

  CdaContext in(CdaNode child, CdaPeople people) {
    boolean found =
        child.first("subject").isEmpty() && child.isOfSomethingDone() && !people.testify(child);
    List<Raw> all = new ArrayList<>(sections);
    if (child.name().equals("section")) {
      all.addAll(names(child));
    }
    return new CdaContext(own && found, all);
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

  private static Raw text(String name) {
    return new Raw.Obj(Map.of("text", Raw.of(name)));
  }

  /** Returns an observation with what is said around it. */
  Raw.Obj around(Raw.Obj observation) {
    Raw.Obj named =
        sections.isEmpty() ? observation : observation.with("category", Raw.of(sections));
    return own ? named : CdaOrganizer.unread(named);
  }
}
