package org.isopter.mapper.foreign.document;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.foreign.vocabulary.Words;
import org.isopter.mapper.json.Raw;

/**
 * What reports, panels, lists and sections say of the observations that they name: those of
 * targets, of an earlier visit, of a relative, or of a report that was withdrawn are no findings.
 */
public final class Holders {

  private static final Set<String> WITHDRAWN = Set.of("entered-in-error", "cancelled");

  /** The lists of members, by the type of the resource that holds them. */
  private static final Map<String, String> MEMBERS =
      Map.of("DiagnosticReport", "result", "Observation", "hasMember", "List", "entry");

  private final Words words;
  private final Map<String, String> doubtful = new HashMap<>();
  private final Map<String, Raw.Obj> reports = new HashMap<>();

  private Holders(Words words) {
    this.words = words;
  }

  /** Reads what the resources of a document say of each other. */
  public static Holders of(List<Document.Part> parts, Words words) {
    Holders holders = new Holders(words);
    for (Document.Part part : parts) {
      holders.holder(part);
    }
    return holders;
  }

  /** Returns what a holder says of a resource that makes it no finding. */
  public Optional<String> doubtOf(Document.Part part) {
    return of(part, doubtful);
  }

  /** Returns the first report that names a resource. */
  public Optional<Raw.Obj> reportOf(Document.Part part) {
    return of(part, reports);
  }

  private static <T> Optional<T> of(Document.Part part, Map<String, T> all) {
    return all.isEmpty()
        ? Optional.empty()
        : part.fullUrl()
            .flatMap(url -> Optional.ofNullable(all.get(url)))
            .or(() -> Optional.ofNullable(all.get(Panels.name(part))));
  }

  private void holder(Document.Part part) {
    Raw.Obj resource = part.resource();
    String type = Neighbours.type(resource);
    if (type.equals("Composition")) {
      resource.objects("section").forEach(section -> section(section, Panels.name(part)));
    } else if (MEMBERS.containsKey(type)) {
      String list = MEMBERS.getOrDefault(type, "");
      if (type.equals("DiagnosticReport")) {
        members(resource.objects(list)).forEach(to -> reports.putIfAbsent(to, resource));
      }
      doubt(resource).ifPresent(word -> note(resource.objects(list), Panels.name(part), word));
    }
  }

  private void section(Raw.Obj section, String holder) {
    doubt(section).ifPresent(word -> note(section.objects("entry"), holder, word));
    section.objects("section").forEach(inner -> section(inner, holder));
  }

  private void note(List<Raw.Obj> members, String holder, String word) {
    members(members).forEach(to -> doubtful.putIfAbsent(to, holder + ": \"" + word + "\""));
  }

  private static List<String> members(List<Raw.Obj> members) {
    return members.stream()
        .map(member -> member.object("item").orElse(member))
        .flatMap(member -> member.string("reference").stream())
        .map(Holders::tail)
        .toList();
  }

  /** Returns the status that withdraws a holder, or the word of its names that doubts. */
  private Optional<String> doubt(Raw.Obj holder) {
    Optional<String> status = holder.string("status").filter(WITHDRAWN::contains);
    return status.isPresent()
        ? status
        : names(holder).stream().flatMap(name -> words.otherwise(name, "").stream()).findFirst();
  }

  private static List<String> names(Raw.Obj holder) {
    List<String> names = new ArrayList<>();
    holder.string("title").ifPresent(names::add);
    List<Raw> concepts = new ArrayList<>(holder.objects("category"));
    holder.object("code").ifPresent(concepts::add);
    for (Raw concept : concepts) {
      concept.string("text").ifPresent(names::add);
      concept.objects("coding").forEach(c -> c.string("display").ifPresent(names::add));
    }
    return names;
  }

  /** A reference to a server or to a version names the same resource as the short one. */
  private static String tail(String reference) {
    int history = reference.indexOf("/_history/");
    String plain = history < 0 ? reference : reference.substring(0, history);
    int at = plain.lastIndexOf("/Observation/");
    return at < 0 ? plain : plain.substring(at + 1);
  }
}
