package org.isopter.mapper.foreign.document;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.foreign.vocabulary.Habits;
import org.isopter.mapper.foreign.vocabulary.SideText;
import org.isopter.mapper.foreign.vocabulary.Words;
import org.isopter.mapper.json.Raw;
import org.isopter.model.exam.Fact;
import org.isopter.model.value.Site;

/**
 * What reports, panels, lists and sections say of the observations that they name: those of
 * targets, of an earlier visit, of a relative, or of a report that was withdrawn are no findings.
 */
public final class Holders {

  /** The lists of members, by the type of the resource that holds them. */
  private static final Map<String, String> MEMBERS =
      Map.of(
          "DiagnosticReport",
          "result",
          "Observation",
          "hasMember",
          "List",
          "entry",
          "DetectedIssue",
          "implicated",
          "VerificationResult",
          "target",
          "Provenance",
          "target",
          "Communication",
          "about");

  private final Habits habits;
  private final Words words;
  private final HolderDoubts doubts;
  private final Neighbours neighbours;
  private final IdentityHashMap<Raw, Document.Part> byResource = new IdentityHashMap<>();
  private final Map<String, String> doubtful = new HashMap<>();
  private final Map<String, Map<Site, String>> otherwiseSided = new HashMap<>();
  private final Map<String, Raw.Obj> reports = new HashMap<>();

  private Holders(List<Document.Part> parts, Neighbours neighbours, Habits habits) {
    this.habits = habits;
    this.words = habits.words();
    this.doubts = new HolderDoubts(words);
    this.neighbours = neighbours;
    parts.forEach(part -> byResource.put(part.resource(), part));
  }

  /** Reads what the resources of a document say of each other. */
  public static Holders of(List<Document.Part> parts, Neighbours neighbours, Habits habits) {
    Holders holders = new Holders(parts, neighbours, habits);
    parts.forEach(holders::holder);
    return holders;
  }

  /** Returns what a holder says of a resource that makes it no finding. */
  public Optional<String> doubtOf(Document.Part part) {
    return of(part, doubtful);
  }

  /** Returns which holder of a resource names one eye, and it is not that of a fact. */
  public Optional<String> otherEyeOf(Document.Part part, List<Fact<?>> facts) {
    Map<Site, String> named =
        otherwiseSided.isEmpty()
            ? Map.of()
            : otherwiseSided.getOrDefault(Panels.name(part), Map.of());
    return named.entrySet().stream()
        .filter(
            eye ->
                facts.stream()
                    .anyMatch(f -> f.site() != Site.BOTH && !f.site().equals(eye.getKey())))
        .map(Map.Entry::getValue)
        .findFirst();
  }

  /** Returns the first report that names a resource. */
  public Optional<Raw.Obj> reportOf(Document.Part part) {
    return of(part, reports);
  }

  private static <T> Optional<T> of(Document.Part part, Map<String, T> all) {
    return all.isEmpty() ? Optional.empty() : Optional.ofNullable(all.get(Panels.name(part)));
  }

  private void holder(Document.Part part) {
    Raw.Obj resource = part.resource();
    String type = Neighbours.type(resource);
    if (type.equals("Composition")) {
      composition(resource, Panels.name(part));
    } else if (type.equals("Linkage")) {
      List<Raw.Obj> items = resource.objects("item");
      List<Raw.Obj> old = items.stream().filter(Holders::isOutdated).toList();
      note(resource, old, Panels.name(part) + ": \"historical\"");
    } else if (MEMBERS.containsKey(type)) {
      List<Raw.Obj> members = resource.objects(MEMBERS.getOrDefault(type, ""));
      if (members.isEmpty()) {
        comment(resource, part);
        return;
      }
      if (type.equals("DiagnosticReport")) {
        members.forEach(
            to -> member(resource, to).ifPresent(name -> reports.putIfAbsent(name, resource)));
        report(resource, members, Panels.name(part));
      }
      doubts
          .of(resource, type)
          .ifPresent(word -> note(resource, members, Panels.name(part) + ": \"" + word + "\""));
      List<Raw.Obj> removed = members.stream().filter(this::isRemoved).toList();
      note(resource, removed, Panels.name(part) + ": \"deleted\"");
      comment(resource, part);
      sided(resource, resource, members, Panels.name(part));
      members.forEach(to -> contradiction(resource, to, Panels.name(part)));
    }
  }

  /** A report is of this examination as far as its categories are known, as those of a section. */
  private void report(Raw.Obj report, List<Raw.Obj> members, String name) {
    if (!report.objects("category").stream().allMatch(this::isKnownCategory)) {
      note(report, members, name + ": \"a category that is not understood\"");
    }
    Set<Site> said = SideText.in(report.string("conclusion").orElse(""));
    List<Set<Site>> found =
        members.stream()
            .map(to -> reference(to).flatMap(at -> neighbours.find(report, at)))
            .map(to -> to.map(this::eyes).orElse(Set.of()))
            .toList();
    boolean none =
        found.stream().noneMatch(Set::isEmpty)
            && found.stream().allMatch(eyes -> Collections.disjoint(eyes, said))
            && found.stream().noneMatch(eyes -> eyes.contains(Site.BOTH));
    if (said.size() == 1 && !said.contains(Site.BOTH) && none) {
      note(report, members, name + ": \"another eye\"");
    }
  }

  private boolean isKnownCategory(Raw.Obj category) {
    boolean coded =
        category.objects("coding").stream()
            .allMatch(
                coding -> {
                  String code = coding.string("code").orElse("");
                  String token = coding.string("system").orElse("") + "|" + code;
                  return habits.surroundings().isCategory(token)
                      || isOfExamination(coding.string("display").orElse(code));
                });
    return coded && category.string("text").stream().allMatch(this::isOfExamination);
  }

  /** What is of another person, or a panel of the other eye, contradicts what it names. */
  private void contradiction(Raw.Obj holder, Raw.Obj member, String name) {
    Optional<Raw.Obj> found =
        reference(member).flatMap(reference -> neighbours.find(holder, reference));
    if (found.isEmpty()) {
      return;
    }
    Set<Site> eyes = eyes(holder);
    Set<Site> other = eyes(found.get());
    boolean another =
        !eyes.contains(Site.BOTH) && !eyes.isEmpty() && Collections.disjoint(eyes, other);
    if (neighbours.differ(holder, "subject", found.get(), "subject")) {
      note(holder, List.of(member), name + ": \"another person\"");
    } else if (another && !other.isEmpty()) {
      note(holder, List.of(member), name + ": \"another eye\"");
    }
  }

  /** Notes the only eye that the names and the narrative of a holder tell of. */
  private void sided(Raw.Obj document, Raw.Obj holder, List<Raw.Obj> members, String name) {
    Set<Site> eyes = eyes(holder);
    HolderDoubts.names(holder).forEach(text -> eyes.addAll(SideText.in(text)));
    eyes.addAll(SideText.in(NarrativeWords.of(holder)));
    if (eyes.size() == 1 && !eyes.contains(Site.BOTH)) {
      String doubt = name + ": \"another eye\"";
      for (Raw.Obj member : members) {
        member(document, member)
            .ifPresent(
                to ->
                    otherwiseSided
                        .computeIfAbsent(to, any -> new EnumMap<>(Site.class))
                        .put(eyes.iterator().next(), doubt));
      }
    }
  }

  private Set<Site> eyes(Raw.Obj resource) {
    Set<Site> eyes = EnumSet.noneOf(Site.class);
    for (Raw.Obj site : resource.object("bodySite").stream().toList()) {
      HolderDoubts.texts(site).forEach(text -> eyes.addAll(SideText.ofSite(text)));
      for (Raw.Obj coding : site.objects("coding")) {
        String token = coding.string("system").orElse("") + "|" + coding.string("code").orElse("");
        habits.site(token).ifPresent(eyes::add);
        habits.qualifier(token).ifPresent(eyes::add);
      }
    }
    return eyes;
  }

  private static Optional<String> reference(Raw.Obj member) {
    return member
        .object("item")
        .or(() -> member.object("resource"))
        .orElse(member)
        .string("reference");
  }

  /** An observation in words may be a comment on the one that it was derived from. */
  private void comment(Raw.Obj resource, Document.Part part) {
    List<Raw.Obj> others = new ArrayList<>(resource.objects("derivedFrom"));
    others.addAll(resource.objects("focus"));
    others.addAll(resource.objects("hasMember"));
    if (!others.isEmpty() && resource.string("valueString").filter(words::doubts).isPresent()) {
      note(resource, others, Panels.name(part) + ": \"a comment\"");
    }
  }

  /** An entry of a list may say that it is no longer one, or that it is wrong. */
  private boolean isRemoved(Raw.Obj entry) {
    return entry.get("deleted").filter(new Raw.Leaf(Raw.Kind.TRUTH, "true")::equals).isPresent()
        || entry.object("flag").stream()
            .flatMap(flag -> HolderDoubts.texts(flag).stream())
            .anyMatch(words::doubts);
  }

  /** FHIR R4, LinkageType: information that is no longer true. */
  private static boolean isOutdated(Raw.Obj item) {
    return item.string("type").filter("historical"::equals).isPresent();
  }

  /** What the patient or a relative wrote alone is no examination. */
  private void composition(Raw.Obj document, String name) {
    Optional<String> doubt =
        HolderDoubts.isByLayman(document, "author")
            ? Optional.of("by the patient or a relative")
            : doubts.ofDocument(document);
    for (Raw.Obj section : document.objects("section")) {
      section(document, section, doubt.map(word -> name + ": \"" + word + "\""), name);
    }
  }

  private boolean isOfExamination(String name) {
    String rest = SideText.without(name);
    return rest.isBlank() || habits.surroundings().categorises(rest);
  }

  /** What is said of a section is said of those in it. */
  private void section(Raw.Obj document, Raw.Obj section, Optional<String> around, String holder) {
    Optional<String> doubt = around.or(() -> doubtOf(document, section, holder));
    List<Raw.Obj> entries = section.objects("entry");
    doubt.ifPresent(word -> note(document, entries, word));
    sided(document, section, entries, holder);
    entries.forEach(entry -> contradiction(document, entry, holder));
    section.objects("section").forEach(inner -> section(document, inner, doubt, holder));
  }

  private Optional<String> doubtOf(Raw.Obj document, Raw.Obj section, String holder) {
    if (!HolderDoubts.names(section).stream().allMatch(this::isOfExamination)) {
      return Optional.of(holder + ": \"a section whose name is not that of an examination\"");
    }
    boolean other =
        section
            .object("focus")
            .flatMap(focus -> focus.string("reference"))
            .filter(focus -> !focus.contains("Patient/"))
            .isPresent();
    return other || neighbours.differ(section, "focus", document, "subject")
        ? Optional.of(holder + ": \"another focus\"")
        : Optional.empty();
  }

  private void note(Raw.Obj holder, List<Raw.Obj> members, String doubt) {
    members.forEach(to -> member(holder, to).ifPresent(name -> doubtful.putIfAbsent(name, doubt)));
  }

  private Optional<String> member(Raw.Obj holder, Raw.Obj member) {
    return reference(member)
        .flatMap(reference -> neighbours.find(holder, reference))
        .flatMap(found -> Optional.ofNullable(byResource.get(found)))
        .map(Panels::name);
  }
}
