package org.isopter.mapper.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.record.tree.Complaints;
import org.isopter.mapper.record.tree.Node;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Site;

/** Reads the findings of a record: by finding, by site, entry by entry. */
final class FindingsReader {

  private final Catalogue catalogue;
  private final Scalars scalars;
  private final Complaints complaints;
  private final List<Fact<?>> facts = new ArrayList<>();

  FindingsReader(Catalogue catalogue, Scalars scalars, Complaints complaints) {
    this.catalogue = catalogue;
    this.scalars = scalars;
    this.complaints = complaints;
  }

  /** Returns every fact that could be read. */
  List<Fact<?>> read(Node.Tree record) {
    Optional<Node> findings = record.get(Keys.FINDINGS);
    if (findings.orElse(null) instanceof Node.Tree tree) {
      tree.members().forEach(this::finding);
    } else {
      complaints.add(
          findings.map(Node::place).orElseGet(() -> record.place().key(Keys.FINDINGS)),
          findings.map(Node::shown).orElse("nothing"),
          "the findings by name",
          "write { } when there are none");
    }
    return facts;
  }

  private void finding(String id, Node.Member member) {
    catalogue
        .byId(id)
        .ifPresentOrElse(finding -> sites(finding, member.value()), () -> unknown(id, member));
  }

  private void unknown(String id, Node.Member member) {
    List<String> ids = catalogue.all().stream().<String>map(Finding::id).toList();
    String advice = Scalars.wordAdvice(id, ids);
    complaints.add(
        member.key(),
        "an unknown finding",
        "a finding of the catalogue",
        advice.isEmpty() ? "look the name up in the catalogue" : advice);
  }

  private void sites(Finding<?> finding, Node node) {
    if (node instanceof Node.Tree tree && !tree.members().isEmpty()) {
      tree.members().forEach((word, member) -> site(finding, word, member));
    } else {
      complaints.add(node, siteWords(finding), "say which eye: a side is never guessed");
    }
  }

  private void site(Finding<?> finding, String word, Node.Member member) {
    Optional<Site> site = siteOf(word);
    if (site.filter(finding.sites()::contains).isEmpty()) {
      complaints.add(
          member.key(),
          site.isPresent() ? "the site " + word : "an unknown site",
          siteWords(finding),
          site.isPresent() ? elsewhere(finding) : "");
    } else {
      entries(finding, site.get(), member.value());
    }
  }

  private void entries(Finding<?> finding, Site site, Node node) {
    if (!(node instanceof Node.Series series)) {
      entry(finding, site, node);
    } else if (series.items().isEmpty()) {
      complaints.add(node, "at least one entry", "leave the site out when nothing was recorded");
    } else {
      series.items().forEach(item -> entry(finding, site, item));
    }
  }

  private void entry(Finding<?> finding, Site site, Node node) {
    new EntryReader<>(finding, site, scalars, complaints).read(node).ifPresent(facts::add);
  }

  private static Optional<Site> siteOf(String word) {
    for (Site site : Site.values()) {
      if (site.word().equals(word)) {
        return Optional.of(site);
      }
    }
    return Optional.empty();
  }

  private static String siteWords(Finding<?> finding) {
    return String.join(" or ", finding.sites().stream().map(Site::word).toList());
  }

  private static String elsewhere(Finding<?> finding) {
    return finding.sites().equals(Site.PAIR)
        ? finding.id() + " is said of both eyes together"
        : finding.id() + " is recorded for each eye apart";
  }
}
