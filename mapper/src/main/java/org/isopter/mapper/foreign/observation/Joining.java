package org.isopter.mapper.foreign.observation;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.isopter.mapper.foreign.document.Document;
import org.isopter.mapper.foreign.document.Head;
import org.isopter.mapper.foreign.document.Panels;
import org.isopter.mapper.foreign.document.Visits;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.vocabulary.Meaning;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.json.Raw;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Site;

/**
 * Puts the parts of a refraction together that are sent as observations of their own: those of one
 * person, one eye and one panel, or one time.
 *
 * <p>The first of them holds the fact; the others give their parts to it, and go along whole.
 */
public final class Joining {

  private static final List<String> TIMES =
      List.of("/effectiveDateTime", "/effectiveInstant", "/effectivePeriod/start");

  private final Vocabulary vocabulary;
  private final Duration window;
  private final Document document;
  private final Finding<?> refraction;

  public Joining(Vocabulary vocabulary, Options options, Document document) {
    this.vocabulary = vocabulary;
    this.window = options.window();
    this.document = document;
    this.refraction = vocabulary.catalogue().byId("refraction").orElseThrow();
  }

  /** Returns the translations with every part joined or kept; those that do not hold stay out. */
  public List<Translation> joined(List<Translation> translations, Set<Integer> superseded) {
    if (translations.stream().allMatch(translation -> translation.piece().isEmpty())) {
      return translations;
    }
    List<Translation> all = new ArrayList<>(translations);
    for (List<Visits.Member> visit : new Visits(window).group(members(all, superseded))) {
      for (Map.Entry<Site, List<Visits.Member>> eye : byEye(all, visit).entrySet()) {
        byOrder(eye.getValue()).forEach(members -> joinOrKeep(all, members, eye.getKey()));
      }
    }
    return all;
  }

  private void joinOrKeep(List<Translation> all, List<Visits.Member> members, Site eye) {
    try {
      join(all, members, eye);
    } catch (Refusal refusal) {
      keep(all, members, refusal.reason());
    }
  }

  /** Parts that were ordered apart are of two measurements, unless a panel holds them together. */
  private List<List<Visits.Member>> byOrder(List<Visits.Member> members) {
    if (Visits.rule(members.get(0)).equals("visit-panel")) {
      return List.of(members);
    }
    Map<Optional<Raw>, List<Visits.Member>> byOrder = new LinkedHashMap<>();
    for (Visits.Member member : members) {
      Optional<Raw> order = document.parts().get(member.index()).resource().get("basedOn");
      byOrder.computeIfAbsent(order, any -> new ArrayList<>()).add(member);
    }
    return List.copyOf(byOrder.values());
  }

  private List<Visits.Member> members(List<Translation> all, Set<Integer> superseded) {
    List<Visits.Member> members = new ArrayList<>();
    Map<String, String> panels = Panels.of(document.parts());
    for (int i = 0; i < all.size(); i++) {
      if (all.get(i).piece().isPresent() && !superseded.contains(i)) {
        Head head = all.get(i).head().orElseThrow();
        members.add(Visits.Member.of(i, head, document.parts().get(i), panels));
      }
    }
    return members;
  }

  private Map<Site, List<Visits.Member>> byEye(List<Translation> all, List<Visits.Member> visit) {
    Map<Site, List<Visits.Member>> byEye = new LinkedHashMap<>();
    for (Visits.Member member : visit) {
      Site eye = piece(all, member).sides().get(0).site();
      byEye.computeIfAbsent(eye, any -> new ArrayList<>()).add(member);
    }
    return byEye;
  }

  private void join(List<Translation> all, List<Visits.Member> members, Site eye) throws Refusal {
    Visits.Member first = members.get(0);
    boolean panel = Visits.rule(first).equals("visit-panel");
    refuseGlasses(first.panel());
    if (!panel) {
      refuseDistant(members);
      refuseAlone(all, members);
    }
    List<Place> places = members.stream().map(member -> piece(all, member).holder()).toList();
    Meaning meaning = piece(all, first).meaning();
    Fact<?> fact =
        new SlotReader(vocabulary, places.get(0), meaning, places, List.of(), Optional.empty())
            .parts(refraction, eye);
    Fact<?> complete = withMethod(all, members, fact);
    for (Visits.Member member : members) {
      Translation one = all.get(member.index());
      one.ledger().used("parts-joined");
      Frame.take(piece(all, member).holder(), List.of(complete));
      giveBackOtherTime(one, first.head().at());
      boolean holds = member.index() == first.index();
      all.set(member.index(), holds ? one.holding(complete) : one.joining(first.index()));
    }
  }

  /** Returns the fact with technique and instrument, which all parts must name alike. */
  private Fact<?> withMethod(List<Translation> all, List<Visits.Member> members, Fact<?> fact)
      throws Refusal {
    List<Fact<?>> complete = new ArrayList<>();
    for (Visits.Member member : members) {
      Translation.Piece piece = piece(all, member);
      complete.add(
          new MethodAndNotes(vocabulary, piece.holder()).withMethod(fact, piece.meaning()));
    }
    Fact<?> first = complete.get(0);
    for (Fact<?> other : complete) {
      if (!other.equals(first)) {
        throw apart(
            how(first) + " and " + how(other), "one technique and one instrument for all parts");
      }
    }
    return new MethodAndNotes(vocabulary, piece(all, members.get(0)).holder()).remarked(first);
  }

  private static String how(Fact<?> fact) {
    String by = fact.method().map(Concept::word).orElse("no technique");
    return by + fact.device().map(device -> " with " + device).orElse("");
  }

  private void refuseGlasses(Optional<String> panel) throws Refusal {
    if (panel.isEmpty()) {
      return;
    }
    for (Document.Part part : document.parts()) {
      if (Panels.name(part).equals(panel.get())) {
        Pieces.refuseGlasses(vocabulary, part.resource());
      }
    }
  }

  private void refuseDistant(List<Visits.Member> members) throws Refusal {
    Set<OffsetDateTime> times = new TreeSet<>(OffsetDateTime.timeLineOrder());
    members.forEach(member -> times.add(member.head().at()));
    List<OffsetDateTime> sorted = List.copyOf(times);
    OffsetDateTime last = sorted.get(sorted.size() - 1);
    if (Duration.between(sorted.get(0), last).compareTo(window) > 0) {
      throw apart(sorted.get(0) + " and " + last, "parts of one time, or of one panel");
    }
  }

  /** Of a sphere alone it is not known whether its cylinder was sent elsewhere. */
  private void refuseAlone(List<Translation> all, List<Visits.Member> members) throws Refusal {
    Set<String> keys = new TreeSet<>();
    for (Visits.Member member : members) {
      PartCode.of(vocabulary, piece(all, member).holder(), refraction)
          .ifPresent(code -> keys.add(code.key()));
    }
    if (!keys.containsAll(Set.of("sphere", "cylinder"))) {
      throw apart("only " + String.join(", ", keys), "sphere, cylinder and axis of one eye");
    }
  }

  private static void giveBackOtherTime(Translation one, OffsetDateTime held) {
    if (one.head().filter(head -> head.at().equals(held)).isEmpty()) {
      TIMES.forEach(one.ledger()::giveBack);
    }
  }

  private static void keep(List<Translation> all, List<Visits.Member> members, Reason reason) {
    for (Visits.Member member : members) {
      Ledger ledger = all.get(member.index()).ledger();
      all.set(member.index(), Translation.kept(ledger, List.of(reason)));
    }
  }

  private static Translation.Piece piece(List<Translation> all, Visits.Member member) {
    return all.get(member.index()).piece().orElseThrow();
  }

  private static Refusal apart(String seen, String wanted) {
    return Refusal.of(Why.PART_APART, "", seen, wanted);
  }
}
