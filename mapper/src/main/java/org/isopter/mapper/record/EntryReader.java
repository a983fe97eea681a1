package org.isopter.mapper.record;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.record.tree.Complaints;
import org.isopter.mapper.record.tree.Node;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Site;

/**
 * Reads one entry: what was found of a finding at a site, or why nothing was.
 *
 * @param <V> the type of the finding's value
 */
final class EntryReader<V> {

  private final Finding<V> finding;
  private final Site site;
  private final Scalars scalars;
  private final Complaints complaints;

  EntryReader(Finding<V> finding, Site site, Scalars scalars, Complaints complaints) {
    this.finding = finding;
    this.site = site;
    this.scalars = scalars;
    this.complaints = complaints;
  }

  /** Returns the fact, or nothing after a complaint. */
  Optional<Fact<V>> read(Node node) {
    return node instanceof Node.Tree tree ? keyed(tree) : bare(node);
  }

  private Optional<Fact<V>> bare(Node node) {
    if (!hasValue()) {
      return complaints.add(node, "its parts by key: " + String.join(", ", partKeys()), "");
    }
    if (node.as(Node.Kind.NOTHING).isPresent()) {
      return complaints.add(
          node, "a value, or a reason for its absence", "not done is { absent: not-done }");
    }
    Map<String, Node.Member> alone = Map.of(Keys.VALUE, new Node.Member(node.place(), node));
    return new PanelReader<>(finding.layout(), node.place(), alone, scalars, complaints)
        .read()
        .map(value -> Fact.of(finding, site, value));
  }

  private Optional<Fact<V>> keyed(Node.Tree tree) {
    tree.members().forEach(this::checkKey);
    Optional<Concept> method =
        finding
            .methods()
            .flatMap(list -> tree.get(Keys.METHOD).flatMap(n -> scalars.word(n, list)));
    Optional<OffsetDateTime> at = tree.get(Keys.AT).flatMap(scalars::time);
    Optional<String> device = tree.get(Keys.DEVICE).flatMap(scalars::text);
    List<String> remarks = tree.get(Keys.REMARKS).map(scalars::texts).orElse(List.of());
    return outcome(tree).map(fact -> fact.with(method, at, device).remarks(remarks));
  }

  private Optional<Fact<V>> outcome(Node.Tree tree) {
    Optional<Node> absent = tree.get(Keys.ABSENT);
    if (absent.isEmpty()) {
      return new PanelReader<>(finding.layout(), tree.place(), tree.members(), scalars, complaints)
          .read()
          .map(value -> Fact.of(finding, site, value));
    }
    tree.members().forEach(this::checkBesideAbsent);
    return scalars
        .word(absent.get(), Scalars.REASONS)
        .map(Absence.class::cast)
        .map(reason -> Fact.absent(finding, site, reason));
  }

  private void checkBesideAbsent(String key, Node.Member member) {
    if (key.equals(Keys.VALUE) || isPart(key)) {
      complaints.add(
          member.key(),
          key + " beside absent",
          "either what was found or why nothing was",
          "remove one of them");
    }
  }

  private void checkKey(String key, Node.Member member) {
    if (!isKnown(key)) {
      List<String> known = known();
      complaints.add(
          member.key(),
          "an unknown key",
          "one of " + String.join(", ", known),
          Scalars.wordAdvice(key, known));
    }
  }

  private boolean isKnown(String key) {
    return switch (key) {
      case Keys.VALUE -> hasValue();
      case Keys.METHOD -> finding.methods().isPresent();
      default -> Keys.OF_AN_ENTRY.contains(key) || isPart(key);
    };
  }

  private boolean isPart(String key) {
    for (Part<?, ?> part : finding.layout().commonParts()) {
      if (part.key().equals(key)) {
        return true;
      }
    }
    return false;
  }

  private boolean hasValue() {
    return finding.layout().variants().get(0).value().isPresent();
  }

  private List<String> known() {
    List<String> known = new ArrayList<>(partKeys());
    known.addAll(Keys.OF_AN_ENTRY);
    known.removeIf(key -> !isKnown(key));
    return known;
  }

  private List<String> partKeys() {
    return finding.layout().commonParts().stream().<String>map(Part::key).toList();
  }
}
