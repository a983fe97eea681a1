package org.isopter.task.page;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.isopter.mapper.foreign.vocabulary.ForeignPage;
import org.isopter.mapper.foreign.vocabulary.ForeignRule;
import org.isopter.mapper.foreign.vocabulary.ForeignRules;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** The rules for FHIR of other systems: for a terminal, for programs, or as a Markdown page. */
public final class RulePages {

  private RulePages() {}

  /** Returns the rule of a name, or all without one; nothing when there is none of that name. */
  public static Optional<List<ForeignRule>> of(@Nullable String name) {
    return name == null
        ? Optional.of(ForeignRules.all())
        : ForeignRules.byId(name).map(rule -> List.of(rule));
  }

  /** Returns words about a name that no rule has, with those that begin alike. */
  public static String unknown(@Nullable String name) {
    String word = String.valueOf(name);
    String first = word.contains("-") ? word.substring(0, word.indexOf('-')) : word;
    String near =
        ForeignRules.all().stream()
            .map(ForeignRule::id)
            .filter(id -> id.contains(first))
            .collect(Collectors.joining(", "));
    String hint = near.isEmpty() ? "'isopter catalogue --foreign' lists them" : "there is " + near;
    return "no rule is called " + name + "; " + hint;
  }

  /** Returns the page of some rules in a form. */
  public static String page(List<ForeignRule> rules, PageForm form) {
    return switch (form) {
      case TEXT -> text(rules);
      case JSON -> json(rules);
      case MARKDOWN -> "# Rules\n\n" + ForeignPage.rules(rules);
    };
  }

  private static String text(List<ForeignRule> rules) {
    return rules.size() == 1
        ? full(rules.get(0))
        : rules.stream()
            .map(rule -> TermList.line(rule.id(), rule.reason()))
            .collect(Collectors.joining());
  }

  private static String full(ForeignRule rule) {
    TermList page = new TermList(rule.id());
    page.row("kind", rule.kind());
    page.row("why it is safe", rule.reason());
    page.row("takes", rule.takes().json());
    page.row("does not take", rule.refuses().json());
    return page.toString();
  }

  private static String json(List<ForeignRule> rules) {
    ArrayNode list = JsonNodeFactory.instance.arrayNode();
    for (ForeignRule rule : rules) {
      ObjectNode node = list.addObject();
      node.put("id", rule.id()).put("kind", rule.kind()).put("reason", rule.reason());
      node.set("takes", JsonMapper.shared().readTree(rule.takes().json()));
      node.set("doesNotTake", JsonMapper.shared().readTree(rule.refuses().json()));
    }
    return JsonMapper.shared().writerWithDefaultPrettyPrinter().writeValueAsString(list) + "\n";
  }
}
