package org.isopter.mapper.foreign.document;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.value.Canonical;

/** Puts the observations of one person and visit together; each visit becomes one examination. */
public final class Visits {

  private static final String SYSTEM = Canonical.identifier("visit");

  /** An observation that was translated, with what it says apart from its findings. */
  public record Member(int index, Head head, Optional<String> panel, String fingerprint) {

    /** Returns the member that an observation is, among the panels of its document. */
    public static Member of(int index, Head head, Document.Part part, Map<String, String> panels) {
      Optional<String> panel =
          panels.isEmpty() ? Optional.empty() : Optional.ofNullable(panels.get(Panels.name(part)));
      String mark = head.known() ? "" : Head.fingerprint(part.resource());
      return new Member(index, head, panel, mark);
    }
  }

  private final Duration window;

  public Visits(Duration window) {
    this.window = window;
  }

  /** Returns the visits, in the order of their first members; members keep their order. */
  public List<List<Member>> group(List<Member> members) {
    Map<String, List<Member>> byKey = new LinkedHashMap<>();
    for (Member member : members) {
      byKey.computeIfAbsent(key(member), any -> new ArrayList<>()).add(member);
    }
    List<List<Member>> visits = new ArrayList<>();
    byKey
        .values()
        .forEach(group -> visits.addAll(isTimed(group.get(0)) ? byTime(group) : List.of(group)));
    visits.sort(Comparator.comparingInt(visit -> visit.get(0).index()));
    return visits;
  }

  /** Returns the header of a visit; the same visit always gives the same identifier. */
  public static Header header(List<Member> visit) {
    Member first = visit.get(0);
    OffsetDateTime earliest =
        visit.stream().map(m -> m.head().at()).min(OffsetDateTime::compareTo).orElseThrow();
    String name = key(first) + (isTimed(first) ? "|" + earliest.toInstant() : "");
    String id = UUID.nameUUIDFromBytes(name.getBytes(UTF_8)).toString();
    return new Header(
        Identifier.of(SYSTEM, id),
        new Party(first.head().subject().identifier(), name(visit)),
        performer(visit),
        earliest,
        first.head().status(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static Optional<String> name(List<Member> visit) {
    return visit.stream().map(m -> m.head().subject().name()).flatMap(Optional::stream).findFirst();
  }

  /** An examiner is that of the examination where every observation names the same. */
  private static Optional<Party> performer(List<Member> visit) {
    Optional<Party> first = visit.get(0).head().performer();
    return visit.stream().allMatch(m -> m.head().performer().equals(first))
        ? first
        : Optional.empty();
  }

  /** Returns the rule by which the visit was put together. */
  public static String rule(Member member) {
    return member.panel().isPresent()
        ? RuleId.VISIT_PANEL
        : member.head().encounter().isPresent() ? RuleId.VISIT_ENCOUNTER : RuleId.VISIT_TIME;
  }

  private static boolean isTimed(Member member) {
    return rule(member).equals(RuleId.VISIT_TIME);
  }

  private static String key(Member member) {
    Head head = member.head();
    Party subject = head.subject();
    String known = subject.identifier().map(Identifier::toString).orElseGet(subject::toString);
    String person = known + "|" + head.status().word();
    // Two persons may share a name: only what stands together is of one of them.
    String alone = head.known() || !isTimed(member) ? "" : "|" + member.fingerprint();
    String visit =
        member
            .panel()
            .map(panel -> "panel " + panel)
            .or(() -> head.encounter().map(e -> "encounter " + e + " " + head.at().toLocalDate()))
            .orElse("time");
    return person + "|" + visit + alone;
  }

  private List<List<Member>> byTime(List<Member> group) {
    List<Member> sorted = new ArrayList<>(group);
    sorted.sort(Comparator.comparing(m -> m.head().at().toInstant()));
    List<List<Member>> visits = new ArrayList<>();
    Optional<OffsetDateTime> last = Optional.empty();
    for (Member member : sorted) {
      OffsetDateTime at = member.head().at();
      boolean near = last.isPresent() && Duration.between(last.get(), at).compareTo(window) <= 0;
      if (!near) {
        visits.add(new ArrayList<>());
        last = Optional.of(at);
      }
      visits.get(visits.size() - 1).add(member);
    }
    visits.forEach(visit -> visit.sort(Comparator.comparingInt(Member::index)));
    return visits;
  }
}
