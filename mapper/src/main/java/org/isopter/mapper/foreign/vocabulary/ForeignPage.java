package org.isopter.mapper.foreign.vocabulary;

import java.util.ArrayList;
import java.util.List;
import org.isopter.mapper.foreign.ledger.Why;

/** The rules and the reasons as a page of Markdown. */
public final class ForeignPage {

  private ForeignPage() {}

  /** Returns the rules by kind, each with its reason and its two examples. */
  public static String rules() {
    return rules(ForeignRules.all());
  }

  /** Returns some of the rules by kind, each with its reason and its two examples. */
  public static String rules(List<ForeignRule> rules) {
    StringBuilder page = new StringBuilder();
    page.append(
        "The examples state only how they differ from this observation; `null` stands for a\n");
    page.append("member that is not there, a list for the entries of a bundle.\n\n```json\n");
    page.append(ForeignRules.plain()).append("\n```\n");
    for (String kind : kinds(rules)) {
      page.append("\n### ").append(title(kind)).append("\n\n");
      page.append("| rule | why it is safe | takes | does not take |\n|---|---|---|---|\n");
      for (ForeignRule rule : rules) {
        if (rule.kind().equals(kind)) {
          page.append(row(rule));
        }
      }
    }
    return page.toString();
  }

  /** Returns the reasons for which something is kept. */
  public static String reasons() {
    StringBuilder page = new StringBuilder("| reason | what it means |\n|---|---|\n");
    for (Why why : Why.values()) {
      page.append("| `%s` | %s |\n".formatted(why.word(), why.words()));
    }
    return page.toString();
  }

  private static String row(ForeignRule rule) {
    String takes = cell(rule.takes().difference());
    String refuses = cell(rule.refuses().difference());
    return "| `%s` | %s | %s | %s |\n".formatted(rule.id(), rule.reason(), takes, refuses);
  }

  private static String cell(String json) {
    return "`" + json.replace("|", "\\|") + "`";
  }

  private static List<String> kinds(List<ForeignRule> rules) {
    List<String> kinds = new ArrayList<>();
    rules.stream().map(ForeignRule::kind).filter(k -> !kinds.contains(k)).forEach(kinds::add);
    return kinds;
  }

  private static String title(String kind) {
    return Character.toUpperCase(kind.charAt(0)) + kind.substring(1);
  }
}
