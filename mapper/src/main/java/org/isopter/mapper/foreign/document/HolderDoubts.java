package org.isopter.mapper.foreign.document;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.vocabulary.Words;
import org.isopter.mapper.json.Raw;

/** Finds what a report, panel, list or section says that makes no finding of what it holds. */
final class HolderDoubts {

  private static final Set<String> WITHDRAWN = Set.of("entered-in-error", "cancelled", "val-fail");

  /** HL7 v3-DataOperation: what takes a resource back. */
  private static final Set<String> TAKEN_BACK = Set.of("DELETE", "NULLIFY", "ABORT");

  /** The elements that say who tested, or made the holder. */
  private static final List<String> LAYMEN = List.of("performer", "agent", "source");

  private static final Pattern LAYMAN = Pattern.compile("(.*/)?(Patient|RelatedPerson)/[^/]+");

  private static final Pattern BY_LAYMAN =
      Pattern.compile("(?i)\\bby (the |a )?(patient|relative|mother|father|parents?|spouse)\\b");

  /** The usual title of a whole examination (C-CDA, History and Physical), not of the past. */
  private static final Pattern HISTORY =
      Pattern.compile("(?i)\\bhistory (and|&) physical( note)?\\b");

  private final Words words;

  HolderDoubts(Words words) {
    this.words = words;
  }

  /** Returns what withdraws a holder, or turns what it holds into something else. */
  Optional<String> of(Raw.Obj holder, String type) {
    Optional<String> status = holder.string("status").filter(WITHDRAWN::contains);
    if (status.isPresent() || type.equals("VerificationResult")) {
      return status;
    }
    if (holder.object("activity").stream().anyMatch(HolderDoubts::isTakenBack)) {
      return Optional.of("taken back");
    }
    if (type.equals("DetectedIssue")) {
      return Optional.of("an issue");
    }
    if (holder.get("modifierExtension").isPresent() || holder.get("implicitRules").isPresent()) {
      return Optional.of("a modifier");
    }
    if (LAYMEN.stream().anyMatch(name -> isByLayman(holder, name))) {
      return Optional.of("by the patient or a relative");
    }
    boolean panel = type.equals("Observation");
    if (panel && holder.get("focus").isPresent()) {
      return Optional.of("a focus");
    }
    return named(holder)
        .or(() -> remarked(holder))
        .or(() -> panel ? tested(holder) : Optional.empty());
  }

  /** A person, or in a provenance an agent that is one; a list has one source. */
  static boolean isByLayman(Raw.Obj holder, String name) {
    Stream<Raw.Obj> people =
        Stream.concat(holder.object(name).stream(), holder.objects(name).stream());
    return people
        .map(person -> person.object("who").orElse(person))
        .anyMatch(person -> LAYMAN.matcher(person.string("reference").orElse("")).matches());
  }

  /** Returns what withdraws a document, or the word of its title that makes it none of findings. */
  Optional<String> ofDocument(Raw.Obj document) {
    String title = HISTORY.matcher(document.string("title").orElse("")).replaceAll(" ");
    return document
        .string("status")
        .filter(WITHDRAWN::contains)
        .or(() -> words.otherwise(title, ""))
        .or(() -> Optional.of("a title that doubts it").filter(any -> words.doubts(title)));
  }

  private static boolean isTakenBack(Raw.Obj activity) {
    return activity.objects("coding").stream()
        .flatMap(coding -> coding.string("code").stream())
        .anyMatch(TAKEN_BACK::contains);
  }

  /** Returns the word of a name that makes something else of what is held. */
  private Optional<String> named(Raw.Obj holder) {
    return names(holder).stream()
        .filter(name -> words.doubts(name) || words.otherwise(name, "").isPresent())
        .map(name -> words.otherwise(name, "").orElse("a name that doubts it"))
        .findFirst();
  }

  /** Returns the word of a remark on all members that says that they are wrong or of another. */
  private Optional<String> remarked(Raw.Obj holder) {
    List<String> remarks = new ArrayList<>();
    holder.objects("note").forEach(note -> note.string("text").ifPresent(remarks::add));
    holder.objects("payload").forEach(p -> p.string("contentString").ifPresent(remarks::add));
    List.of("conclusion", "comment", "comments")
        .forEach(name -> holder.string(name).ifPresent(remarks::add));
    holder.object("device").flatMap(d -> d.string("display")).ifPresent(remarks::add);
    holder.objects("interpretation").forEach(concept -> remarks.addAll(texts(concept)));
    return remarks.stream()
        .filter(
            text ->
                words.doubts(text)
                    || words.otherwise(text, "").isPresent()
                    || words.changesAll(text).isPresent()
                    || BY_LAYMAN.matcher(text).find())
        .map(text -> "a remark")
        .findFirst();
  }

  /** Returns that a panel says how all of it was tested, which its members do not say. */
  private Optional<String> tested(Raw.Obj panel) {
    List<Raw.Obj> concepts = new ArrayList<>();
    panel.object("code").ifPresent(concepts::add);
    panel.object("method").ifPresent(concepts::add);
    panel.objects("component").forEach(c -> c.object("code").ifPresent(concepts::add));
    return concepts.stream()
        .flatMap(concept -> texts(concept).stream())
        .filter(this::saysHow)
        .map(text -> "how all of it was tested")
        .findFirst();
  }

  private boolean saysHow(String text) {
    return words.namesOtherAcuity(text).isPresent() || words.changesAll(text).isPresent();
  }

  /** Returns the title of a holder, and the words of its codes. */
  static List<String> names(Raw.Obj holder) {
    List<String> names = new ArrayList<>();
    holder.string("title").ifPresent(names::add);
    List<Raw.Obj> concepts = new ArrayList<>(holder.objects("category"));
    holder.object("code").ifPresent(concepts::add);
    holder.object("activity").ifPresent(concepts::add);
    concepts.forEach(concept -> names.addAll(texts(concept)));
    return names;
  }

  /** Returns the words of a concept. */
  static List<String> texts(Raw.Obj concept) {
    List<String> texts = new ArrayList<>(concept.string("text").stream().toList());
    concept.objects("coding").forEach(c -> c.string("display").ifPresent(texts::add));
    return texts;
  }
}
