package org.isopter.mapper.foreign;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.document.Document;
import org.isopter.mapper.foreign.document.Head;
import org.isopter.mapper.foreign.document.Panels;
import org.isopter.mapper.foreign.document.Visits;
import org.isopter.mapper.foreign.ledger.Lazy;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.observation.Translation;
import org.isopter.mapper.foreign.reading.Carried;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.foreign.reading.ReadResource;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.mapper.foreign.returned.ReturnedBundle;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.FactKey;
import org.isopter.model.exam.Header;
import org.isopter.model.value.Fault;

/** Makes examinations of the observations of a document, and says what became of each resource. */
final class Assembly {

  private final Options options;
  private final Document document;
  private final List<Translation> translations;
  private final Map<Integer, Reason> superseded;

  /** The first examination that each name belongs to: of an observation, or one it refers to. */
  private final Map<String, Integer> examByName = new HashMap<>();

  private final Supplier<Map<String, Integer>> examByContent = Lazy.of(this::byContent);

  /** The observations that gave a part to the fact of another, by its number. */
  private final Map<Integer, List<Integer>> givers = new HashMap<>();

  /** The number of the examination that each observation became a part of. */
  private final Map<Integer, Integer> homes = new HashMap<>();

  Assembly(
      Options options,
      Document document,
      List<Translation> translations,
      Map<Integer, Reason> superseded) {
    this.options = options;
    this.document = document;
    this.translations = translations;
    this.superseded = superseded;
    for (int i = 0; i < translations.size(); i++) {
      int giver = i;
      Optional<Integer> joins = translations.get(i).joins();
      joins.ifPresent(j -> givers.computeIfAbsent(j, any -> new ArrayList<>()).add(giver));
    }
  }

  Reading reading() {
    List<List<Visits.Member>> visits = new Visits(options.window()).group(members());
    List<ReadExam> exams = new ArrayList<>();
    for (List<Visits.Member> visit : visits) {
      int number = exams.size();
      visit.forEach(member -> homes.put(member.index(), number));
      exams.add(exam(visit));
      references(visit).forEach(name -> examByName.putIfAbsent(name, number));
    }
    List<List<Carried.Whole>> wholes = wholes(exams.size());
    List<ReadExam> read = new ArrayList<>();
    for (int i = 0; i < exams.size(); i++) {
      List<PlacedLeaf> frame = i == 0 ? document.frame() : List.of();
      List<Carried.OfFact> leaves = exams.get(i).carried().leaves();
      read.add(exams.get(i).carrying(new Carried(leaves, wholes.get(i), frame)));
    }
    Carried rest =
        exams.isEmpty() ? new Carried(List.of(), wholes.get(0), document.frame()) : Carried.NOTHING;
    return Reading.of(read, resources(), rest);
  }

  private List<Visits.Member> members() {
    Map<String, String> panels = Panels.of(document.parts());
    List<Visits.Member> members = new ArrayList<>();
    for (int i = 0; i < translations.size(); i++) {
      Optional<Head> head = translations.get(i).head();
      if (head.isPresent() && !superseded.containsKey(i) && translations.get(i).joins().isEmpty()) {
        members.add(Visits.Member.of(i, head.get(), document.parts().get(i), panels));
      }
    }
    return members;
  }

  private ReadExam exam(List<Visits.Member> visit) {
    Header header = Visits.header(visit);
    List<Fact<?>> facts = new ArrayList<>();
    List<Integer> of = new ArrayList<>();
    visit.forEach(member -> settle(member.index(), member.head(), header));
    for (Visits.Member member : visit) {
      for (Fact<?> fact : translations.get(member.index()).facts()) {
        facts.add(fact.at(member.head().at()));
        of.add(member.index());
      }
    }
    Exam exam = new Exam(header, facts);
    List<Integer> places = places(exam, facts);
    Carried leaves = new Carried(left(exam, places, of), List.of(), List.of());
    List<String> from = visit.stream().map(m -> document.parts().get(m.index()).at()).toList();
    return new ReadExam(exam, leaves, Visits.rule(visit.get(0)), read(places, of), from);
  }

  /** Takes or gives back what the header of the examination says for all of its observations. */
  private void settle(int member, Head head, Header header) {
    Ledger ledger = translations.get(member).ledger();
    if (header.performer().isPresent()) {
      Head.takePerformer(ledger.root());
    }
    Optional<String> name = head.subject().name();
    if (name.isPresent() && !name.equals(header.subject().name())) {
      ledger.giveBack("subject", "display");
    }
    for (int giver : givers.getOrDefault(member, List.of())) {
      settle(giver, translations.get(giver).head().orElseThrow(), header);
    }
  }

  /** Finds where the facts stand in the examination, which has an order of its own. */
  private static List<Integer> places(Exam exam, List<Fact<?>> facts) {
    Set<Integer> used = new LinkedHashSet<>();
    for (Fact<?> fact : facts) {
      used.add(place(exam, fact, used));
    }
    return List.copyOf(used);
  }

  private List<ReadExam.ReadFact> read(List<Integer> places, List<Integer> of) {
    Map<Integer, ReadExam.ReadFact> byPlace = new java.util.TreeMap<>();
    for (int i = 0; i < places.size(); i++) {
      String at = document.parts().get(of.get(i)).at();
      Set<String> rules = new TreeSet<>(translations.get(of.get(i)).ledger().rules());
      byPlace.put(places.get(i), new ReadExam.ReadFact(at, rules));
    }
    return List.copyOf(byPlace.values());
  }

  /** Finds the names that the first facts of each source have in the examination. */
  private List<Carried.OfFact> left(Exam exam, List<Integer> places, List<Integer> of) {
    List<FactKey> keys = exam.keys();
    Set<Integer> done = new LinkedHashSet<>();
    Map<Integer, Carried.OfFact> byKey = new java.util.TreeMap<>();
    for (int i = 0; i < places.size(); i++) {
      int source = of.get(i);
      List<PlacedLeaf> leaves = translations.get(source).ledger().leftoverWholes();
      // What was made of a resource goes along in that resource, which is kept whole.
      boolean made = document.parts().get(source).madeOf().isPresent();
      if (done.add(source) && !leaves.isEmpty() && !made) {
        int place = places.get(i);
        byKey.put(place, new Carried.OfFact(keys.get(place).text(), leaves));
      }
    }
    return List.copyOf(byKey.values());
  }

  private static int place(Exam exam, Fact<?> fact, Set<Integer> used) {
    boolean same = fact.at().equals(Optional.of(exam.header().performed()));
    for (int i = 0; i < exam.facts().size(); i++) {
      Fact<?> there = exam.facts().get(i);
      Fact<?> timed = same && there.at().isEmpty() ? there.at(exam.header().performed()) : there;
      if (!used.contains(i) && timed.equals(fact)) {
        return i;
      }
    }
    throw new IllegalStateException("an examination lost " + fact.finding());
  }

  private Set<String> references(List<Visits.Member> visit) {
    Set<String> names = new LinkedHashSet<>();
    for (Visits.Member member : visit) {
      Document.Part part = document.parts().get(member.index());
      names.addAll(Panels.references(part.resource()));
      part.fullUrl().ifPresent(names::add);
      if (isNamed(part)) {
        names.add(Panels.name(part));
      }
    }
    return names;
  }

  /** Says whether a resource has a name that needs not be made of its content. */
  private static boolean isNamed(Document.Part part) {
    return part.fullUrl().isPresent() || part.resource().string("id").isPresent();
  }

  /** Returns the first examination of each observation whose name is made of its content. */
  private Map<String, Integer> byContent() {
    Map<String, Integer> byContent = new HashMap<>();
    homes.forEach(
        (member, number) -> {
          Document.Part part = document.parts().get(member);
          if (!isNamed(part)) {
            byContent.merge(Panels.name(part), number, Math::min);
          }
        });
    return byContent;
  }

  /** What was kept goes with the examination that refers to it, or that it refers to. */
  private List<List<Carried.Whole>> wholes(int exams) {
    List<List<Carried.Whole>> wholes = new ArrayList<>();
    for (int i = 0; i < Math.max(exams, 1); i++) {
      wholes.add(new ArrayList<>());
    }
    for (int i = 0; i < translations.size(); i++) {
      Document.Part part = document.parts().get(i);
      int number = i;
      Optional<Integer> joins = translations.get(i).joins();
      boolean goes = treatedAsKept(i) || joins.isPresent();
      if (goes && part.madeOf().isEmpty()) {
        String why = joins.isPresent() ? Why.JOINED.word() : reasons(i).get(0).why().word();
        String word = part.keptBefore().orElse(why);
        int home =
            joins
                .flatMap(j -> Optional.ofNullable(homes.get(j)))
                .orElseGet(() -> home(number, part));
        wholes.get(home).add(new Carried.Whole(part.address(), word, part.resource()));
      }
    }
    return wholes;
  }

  private int home(int i, Document.Part part) {
    List<String> names = new ArrayList<>(part.fullUrl().stream().toList());
    // What has neither address nor id is kept as what was taken is only where it repeats that.
    if (isNamed(part) || superseded.containsKey(i) || part.keptBefore().isPresent()) {
      names.add(Panels.name(part));
    }
    return first(names).or(() -> first(Panels.references(part.resource()))).orElse(0);
  }

  private Optional<Integer> first(Collection<String> names) {
    Optional<Integer> first = Optional.empty();
    for (String name : names) {
      Optional<Integer> known = Optional.ofNullable(examByName.get(name));
      Optional<Integer> content =
          name.startsWith(Document.Part.CONTENT)
              ? Optional.ofNullable(examByContent.get().get(name))
              : Optional.empty();
      for (Integer exam : Stream.concat(known.stream(), content.stream()).toList()) {
        first = first.filter(before -> before <= exam).or(() -> Optional.of(exam));
      }
    }
    return first;
  }

  private boolean treatedAsKept(int i) {
    return translations.get(i).head().isEmpty() || superseded.containsKey(i);
  }

  private List<Reason> reasons(int i) {
    Reason later = superseded.get(i);
    return later == null ? translations.get(i).reasons() : List.of(later);
  }

  private List<ReadResource> resources() {
    List<ReadResource> resources = new ArrayList<>();
    for (int i = 0; i < translations.size(); i++) {
      Document.Part part = document.parts().get(i);
      ResourceOutcome outcome =
          treatedAsKept(i) ? new ResourceOutcome.Kept(reasons(i)) : translated(i);
      resources.add(new ReadResource(part.at(), part.resource(), outcome));
    }
    if (resources.isEmpty() || document.parts().isEmpty()) {
      document.frame().stream()
          .filter(element -> element.at().isEmpty())
          .forEach(element -> resources.add(noResource(element)));
    }
    return resources;
  }

  private static ReadResource noResource(PlacedLeaf element) {
    Fault fault = Fault.of("", "no resourceType", "a FHIR resource");
    return new ReadResource(
        "", element.value(), new ResourceOutcome.Kept(List.of(new Reason(Why.NO_RESOURCE, fault))));
  }

  private ResourceOutcome translated(int i) {
    Translation translation = translations.get(i);
    Set<String> used = new TreeSet<>(translation.ledger().rules());
    List<PlacedLeaf> leftover = translation.ledger().leftover();
    boolean plain = used.isEmpty() && translation.reasons().isEmpty();
    if (plain && leftover.stream().allMatch(ReturnedBundle::isTransport)) {
      return new ResourceOutcome.Exact(translation.facts());
    }
    List<Fact<?>> facts = translation.joins().map(translations::get).orElse(translation).facts();
    return new ResourceOutcome.Translated(
        facts, used, translation.ledger().taken(), leftover, translation.reasons());
  }
}
