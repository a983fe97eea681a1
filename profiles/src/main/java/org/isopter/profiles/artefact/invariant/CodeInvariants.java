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
import org.isopter.model.finding.When;
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
    finding.codes().refined().stream()
        .filter(Codes.Refined::isSided)
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
    String codes = refined.codes().stream().map(Code::code).collect(Collectors.joining(" or "));
    return Invariant.of(
        finding.id() + "-" + refined.when().name(),
        "a code " + codes + " is given exactly when " + refined.when().words(),
        "code." + Paths.codedAs(refined.codes()) + " = (" + condition(refined) + ")",
        CODE,
        refined.when().fold(where));
  }

  private String condition(Codes.Refined refined) {
    String when = refined.when().fold(holds);
    return refined.isSided()
        ? when + " and " + bodySite(List.copyOf(refined.bySite().keySet()))
        : when;
  }

  /** The condition as FHIRPath on the observation. */
  private final When.Cases<String> holds =
      new When.Cases<>() {
        @Override
        public String part(When.Part asked) {
          return component(asked) + "." + Paths.valueIn(codes(asked));
        }

        @Override
        public String value(When.Value asked) {
          return Paths.valueIn(codes(asked));
        }

        @Override
        public String method(When.Method asked) {
          return "method." + Paths.codedAs(codes(asked));
        }
      };

  /** The element that the condition reads. */
  private final When.Cases<String> where =
      new When.Cases<>() {
        @Override
        public String part(When.Part asked) {
          return component(asked) + ".value";
        }

        @Override
        public String value(When.Value asked) {
          return "value";
        }

        @Override
        public String method(When.Method asked) {
          return "method";
        }
      };

  private String component(When.Part asked) {
    return Paths.component(part(asked.key()).code());
  }

  private static List<Code> codes(When asked) {
    return asked.answers().stream().map(Concept::code).toList();
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
