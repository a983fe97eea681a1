package org.isopter.model.wire;

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

/** The rules between the codes of a finding, its body site and its parts. */
final class CodeRules {

  private static final ElementPath CODE = ElementPath.of("code", "coding");
  private static final ElementPath SITE = ElementPath.of("bodySite", "coding");

  private final Finding<?> finding;

  private CodeRules(Finding<?> finding) {
    this.finding = finding;
  }

  static List<Condition.Rule> of(Finding<?> finding) {
    CodeRules of = new CodeRules(finding);
    return Stream.of(of.site().stream(), of.side().stream(), of.refined().stream())
        .flatMap(rules -> rules)
        .toList();
  }

  private List<Condition.Rule> site() {
    List<Site> sites = finding.sites();
    if (sites.size() == Site.values().length) {
      return List.of();
    }
    String words = sites.stream().map(Site::word).collect(Collectors.joining(" or "));
    String human = finding.title() + " is recorded at body site " + words;
    return List.of(Condition.Rule.of(finding.id() + "-site", human, bodySite(sites), SITE));
  }

  private List<Condition.Rule> side() {
    Map<Site, List<Code>> bySite = new EnumMap<>(Site.class);
    finding.codes().bySite().forEach((site, code) -> add(bySite, site, code));
    finding.codes().refined().stream()
        .filter(Codes.Refined::isSided)
        .forEach(r -> r.bySite().forEach((site, code) -> add(bySite, site, code)));
    List<Test> tests = bySite.entrySet().stream().map(CodeRules::beside).toList();
    return tests.isEmpty()
        ? List.of()
        : List.of(
            Condition.Rule.of(
                finding.id() + "-side",
                "a code that names a side stands beside the body site of that side",
                new Test.And(tests),
                CODE,
                SITE));
  }

  private static Test beside(Map.Entry<Site, List<Code>> site) {
    Test named = Tests.codedAs(ElementPath.of("code"), site.getValue());
    return new Test.Group(Tests.implies(named, bodySite(List.of(site.getKey()))));
  }

  private List<Condition.Rule> refined() {
    return finding.codes().refined().stream().map(this::refined).toList();
  }

  private Condition.Rule refined(Codes.Refined refined) {
    String codes = refined.codes().stream().map(Code::code).collect(Collectors.joining(" or "));
    return Condition.Rule.of(
        finding.id() + "-" + refined.when().name(),
        "a code " + codes + " is given exactly when " + refined.when().words(),
        new Test.Same(
            Tests.codedAs(ElementPath.of("code"), refined.codes()),
            new Test.Group(condition(refined)),
            true),
        CODE,
        refined.when().fold(where));
  }

  private Test condition(Codes.Refined refined) {
    Test when = refined.when().fold(holds);
    return refined.isSided()
        ? Tests.and(when, bodySite(List.copyOf(refined.bySite().keySet())))
        : when;
  }

  /** The condition as a test on the observation. */
  private final When.Cases<Test> holds =
      new When.Cases<>() {
        @Override
        public Test part(When.Part asked) {
          return Tests.valueIn(component(asked), codes(asked));
        }

        @Override
        public Test value(When.Value asked) {
          return Tests.valueIn(ElementPath.THIS, codes(asked));
        }

        @Override
        public Test method(When.Method asked) {
          return Tests.codedAs(ElementPath.of("method"), codes(asked));
        }
      };

  /** The element that the condition reads. */
  private final When.Cases<ElementPath> where =
      new When.Cases<>() {
        @Override
        public ElementPath part(When.Part asked) {
          return component(asked).to("value");
        }

        @Override
        public ElementPath value(When.Value asked) {
          return Tests.VALUE;
        }

        @Override
        public ElementPath method(When.Method asked) {
          return ElementPath.of("method");
        }
      };

  private ElementPath component(When.Part asked) {
    return Tests.component(part(asked.key()).code());
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

  private static Test bodySite(List<Site> sites) {
    return Tests.codedAs(
        ElementPath.of("bodySite"), sites.stream().<Code>map(Concept::code).toList());
  }

  private static void add(Map<Site, List<Code>> bySite, Site site, Code code) {
    bySite.computeIfAbsent(site, any -> new ArrayList<>()).add(code);
  }
}
