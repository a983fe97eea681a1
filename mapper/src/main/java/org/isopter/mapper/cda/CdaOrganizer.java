package org.isopter.mapper.cda;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.mapper.json.Raw;

/**
 * The observations that an organizer holds together. Its code says something of each of them, as
 * "corrected visual acuity" does; and the parts of a refraction are one observation.
 */
final class CdaOrganizer {

  private static final String REFRACTION = "251794006";
  private static final Set<String> ACUITIES =
      Set.of("251739003", "251743004", "363983007", "419475002", "260246004");
  private static final Set<String> KNOWN =
      Set.of(
          "templateId",
          "id",
          "code",
          "statusCode",
          "effectiveTime",
          "author",
          "component",
          "text",
          "performer",
          "informant",
          "realmCode",
          "typeId");

  private final Optional<Raw.Obj> subject;
  private final CdaNarrative narrative;
  private final CdaPeople people;

  CdaOrganizer(Optional<Raw.Obj> subject, CdaNarrative narrative, CdaPeople people) {
    this.subject = subject;
    this.narrative = narrative;
    this.people = people;
  }

  CdaPeople people() {
    return people;
  }

  /** Returns an observation that no organizer holds. */
  Raw.Obj single(CdaNode observation) {
    Raw.Obj read = CdaObservation.of(observation, narrative, subject);
    return people.testify(observation) || people.areYoungerThan(read) ? unread(read) : read;
  }

  /** Returns the observations of an organizer. */
  List<Raw.Obj> read(CdaNode organizer) {
    List<Raw.Obj> members = new ArrayList<>();
    for (CdaNode component : organizer.all("component")) {
      component.all("observation").forEach(one -> members.add(single(one)));
      component.all("organizer").forEach(inner -> members.addAll(read(inner)));
    }
    Optional<CdaNode> code = organizer.first("code");
    List<Raw.Obj> all =
        code.filter(of -> of.has("code", REFRACTION)).isPresent()
            ? refractions(members, code.get())
            : members.stream().map(member -> under(member, code)).toList();
    List<Raw.Obj> worded = all.stream().map(member -> worded(member, organizer)).toList();
    return isPlain(organizer, members)
        ? worded
        : worded.stream().map(CdaOrganizer::unread).toList();
  }

  /** What an organizer says in words is said of each of its members. */
  private Raw.Obj worded(Raw.Obj member, CdaNode organizer) {
    List<Raw> words = new ArrayList<>();
    Optional<CdaNode> code = organizer.first("code");
    String name = code.flatMap(of -> of.attribute("displayName")).orElse("");
    if (!name.isEmpty() && !displays(member).contains(name)) {
      words.add(CdaContext.text(name));
    }
    code.stream()
        .flatMap(of -> of.all("translation").stream())
        .flatMap(more -> more.attribute("displayName").stream())
        .filter(more -> !displays(member).contains(more))
        .forEach(more -> words.add(CdaContext.text(more)));
    List<CdaNode> texts = new ArrayList<>(organizer.all("text"));
    code.flatMap(of -> of.first("originalText")).ifPresent(texts::add);
    for (CdaNode text : texts) {
      said(text, member, name).ifPresent(said -> words.add(CdaContext.text(said)));
    }
    return words.isEmpty() ? member : categorised(member, words);
  }

  /** The name of what is measured, the day of it, and the row of the member itself are no more. */
  private Optional<String> said(CdaNode text, Raw.Obj member, String name) {
    Optional<String> to = text.first("reference").flatMap(it -> it.attribute("value"));
    Optional<String> own = member.object("text").flatMap(it -> it.string("div"));
    if (to.flatMap(narrative::row).map(row -> "<div>" + row + "</div>").equals(own)
        && own.isPresent()) {
      return Optional.empty();
    }
    String said = to.map(id -> narrative.words(id).orElse("?")).orElseGet(text::text);
    String rest = CdaDay.without(said, member.string("effectiveDateTime").orElse(""));
    boolean named = rest.equalsIgnoreCase(name) || rest.equalsIgnoreCase(name + "s");
    return Optional.of(rest).filter(more -> !more.isEmpty() && !named);
  }

  /** Returns an observation that has more categories. */
  static Raw.Obj categorised(Raw.Obj observation, List<Raw> names) {
    List<Raw> all = new ArrayList<>(observation.list("category"));
    all.addAll(names);
    return observation.with("category", Raw.of(all));
  }

  private static Set<String> displays(Raw.Obj member) {
    return member.object("code").stream()
        .flatMap(code -> code.objects("coding").stream())
        .flatMap(coding -> coding.string("display").stream())
        .collect(Collectors.toSet());
  }

  /** What is not understood of an organizer may touch all that is in it. */
  private boolean isPlain(CdaNode organizer, List<Raw.Obj> members) {
    boolean known =
        organizer.children().stream().map(CdaNode::name).allMatch(KNOWN::contains)
            && organizer.isOfSomethingDone()
            && organizer.all("code").stream().allMatch(CdaOrganizer::isUnqualified)
            && !people.testify(organizer);
    boolean done =
        organizer.all("statusCode").stream().allMatch(status -> status.has("code", "completed"));
    boolean corrected =
        organizer.first("code").filter(code -> code.has("code", CdaAid.CORRECTED)).isPresent();
    return known
        && done
        && members.stream()
            .filter(member -> codes(member).contains(CdaAid.CODE))
            .allMatch(aid -> corrected && answers(aid).equals(Set.of(CdaAid.GLASSES)));
  }

  /** A qualifier or another code of an organizer may say anything of its members. */
  private static boolean isUnqualified(CdaNode code) {
    return code.children().stream()
        .allMatch(
            child ->
                child.name().equals("originalText")
                    || (child.name().equals("translation")
                        && child.attribute("displayName").isPresent()));
  }

  /** Returns an observation as one that nobody takes. */
  static Raw.Obj unread(Raw.Obj member) {
    List<Raw> all = new ArrayList<>(member.list("modifierExtension"));
    all.add(CdaObservation.unread("organizer"));
    return member.with("modifierExtension", Raw.of(all));
  }

  /** An acuity has the code of its organizer beside its own: it says through which lens. */
  private static Raw.Obj under(Raw.Obj member, Optional<CdaNode> organizer) {
    Optional<Raw.Obj> coding = organizer.flatMap(CdaValue::coding);
    Set<String> own = codes(member);
    boolean acuity = own.stream().anyMatch(ACUITIES::contains);
    boolean same = coding.flatMap(it -> it.string("code")).filter(own::contains).isPresent();
    return coding.isEmpty() || same || !acuity ? member : with(member, coding.get());
  }

  private static Raw.Obj with(Raw.Obj member, Raw.Obj coding) {
    return member.with("code", CdaValue.with(member.object("code").orElseThrow(), coding));
  }

  /**
   * The parts of one eye by one method are one refraction, unless a part stands there twice: then
   * nobody knows which belong together. An acuity among them was measured through it.
   */
  private static List<Raw.Obj> refractions(List<Raw.Obj> members, CdaNode code) {
    Map<String, List<Raw.Obj>> groups = new LinkedHashMap<>();
    List<Raw.Obj> all = new ArrayList<>();
    for (Raw.Obj member : members) {
      if (codes(member).stream().anyMatch(ACUITIES::contains)) {
        all.add(under(member, Optional.of(code)));
      } else {
        String key = member.get("bodySite") + " " + member.get("method");
        groups.computeIfAbsent(key, any -> new ArrayList<>()).add(member);
      }
    }
    groups.values().forEach(group -> all.addAll(refraction(group, code)));
    return all;
  }

  private static List<Raw.Obj> refraction(List<Raw.Obj> group, CdaNode code) {
    Set<Set<String>> parts = group.stream().map(CdaOrganizer::codes).collect(Collectors.toSet());
    boolean same =
        shared(group, "status").size() == 1 && shared(group, "effectiveDateTime").size() == 1;
    boolean plain = group.stream().allMatch(member -> extra(member).isEmpty());
    if (group.size() < 2 || parts.size() < group.size() || !same || !plain) {
      return group;
    }
    Raw.Obj whole = group.get(0);
    for (String name : List.copyOf(whole.members().keySet())) {
      whole =
          name.startsWith("value") || name.equals("dataAbsentReason") ? whole.without(name) : whole;
    }
    List<Raw> identifiers = new ArrayList<>();
    group.forEach(member -> identifiers.addAll(member.list("identifier")));
    return List.of(
        whole
            .with("identifier", Raw.of(identifiers))
            .with("code", CdaValue.concept(code).orElseThrow())
            .with("component", Raw.of(group.stream().map(CdaOrganizer::component).toList())));
  }

  private static Set<Optional<Raw>> shared(List<Raw.Obj> group, String name) {
    return group.stream().map(member -> member.get(name)).collect(Collectors.toSet());
  }

  /** Returns what a part says that a component has no place for. */
  private static Set<String> extra(Raw.Obj member) {
    return member.members().keySet().stream()
        .filter(name -> Set.of("note", "modifierExtension", "interpretation").contains(name))
        .collect(Collectors.toSet());
  }

  private static Raw.Obj component(Raw.Obj member) {
    Map<String, Raw> component = new LinkedHashMap<>();
    member
        .members()
        .forEach(
            (name, value) -> {
              if (name.equals("code") || name.startsWith("value") || name.startsWith("dataAbs")) {
                component.put(name, value);
              }
            });
    return new Raw.Obj(component);
  }

  private static Set<String> codes(Raw.Obj member) {
    return codes(member.object("code"));
  }

  private static Set<String> answers(Raw.Obj member) {
    return codes(member.object("valueCodeableConcept"));
  }

  private static Set<String> codes(Optional<Raw.Obj> concept) {
    return concept.stream()
        .flatMap(it -> it.objects("coding").stream())
        .flatMap(coding -> coding.string("code").stream())
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }
}
