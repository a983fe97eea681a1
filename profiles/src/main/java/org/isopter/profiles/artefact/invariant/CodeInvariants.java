package org.isopter.profiles.artefact.invariant;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.finding.Codes;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Site;

/** The invariants between the codes of a finding, its body site and its parts. */
public final class CodeInvariants {

  private static final String CODE = "code.coding";
  private static final String SITE = "bodySite.coding";

  private final Finding<?> finding;

  private CodeInvariants(Finding<?> finding) {
    this.finding = finding;
  }

  public static List<Invariant> of(Finding<?> finding) {
    CodeInvariants of = new CodeInvariants(finding);
    return Stream.of(of.site().stream(), of.side().stream(), of.refined().stream())
        .flatMap(invariants -> invariants)
        .toList();
  }

  private List<Invariant> site() {
    List<Site> sites = finding.sites();
    if (sites.size() == Site.values().length) {
      return List.of();
    }
    String words = sites.stream().map(Site::word).collect(Collectors.joining(" or "));
    String human = finding.title() + " is recorded at body site " + words;
    return List.of(Invariant.of(finding.id() + "-site", human, bodySite(sites), SITE));
  }

  private List<Invariant> side() {
    Map<Site, List<Code>> bySite = new EnumMap<>(Site.class);
    finding.codes().bySite().forEach((site, code) -> add(bySite, site, code));
    finding
        .codes()
        .refined()
        .forEach(r -> r.bySite().forEach((site, code) -> add(bySite, site, code)));
    String expression =
        bySite.entrySet().stream()
            .map(
                e ->
                    "(code."
                        + Paths.codedAs(e.getValue())
                        + " implies "
                        + bodySite(List.of(e.getKey()))
                        + ")")
            .collect(Collectors.joining(" and "));
    return expression.isEmpty()
        ? List.of()
        : List.of(
            Invariant.of(
                finding.id() + "-side",
                "a code that names a side stands beside the body site of that side",
                expression,
                CODE,
                SITE));
  }

  private List<Invariant> refined() {
    return finding.codes().refined().stream().map(this::refined).toList();
  }

  private Invariant refined(Codes.Refined refined) {
    String word = refined.value().word();
    List<Site> sites =
        List.of(Site.values()).stream().filter(refined.bySite()::containsKey).toList();
    List<Code> codes = sites.stream().map(refined.bySite()::get).toList();
    String part =
        Paths.component(part(refined.part()).code())
            + "."
            + Paths.valueIn(List.of(refined.value().code()));
    return Invariant.of(
        finding.id() + "-" + refined.part() + "-" + word,
        "a code "
            + codes.stream().map(Code::code).collect(Collectors.joining(" or "))
            + " is given exactly when "
            + refined.part()
            + " is "
            + word,
        "code." + Paths.codedAs(codes) + " = (" + part + " and " + bodySite(sites) + ")",
        CODE,
        Paths.component(part(refined.part()).code()) + ".value");
  }

  private Part<?, ?> part(String key) {
    return finding.layout().variants().stream()
        .flatMap(variant -> variant.parts().stream())
        .filter(part -> part.key().equals(key))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException(finding + " has no part " + key));
  }

  private static String bodySite(List<Site> sites) {
    return "bodySite." + Paths.codedAs(sites.stream().map(Concept::code).toList());
  }

  private static void add(Map<Site, List<Code>> bySite, Site site, Code code) {
    bySite.computeIfAbsent(site, any -> new ArrayList<>()).add(code);
  }
}
