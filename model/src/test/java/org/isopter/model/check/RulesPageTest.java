package org.isopter.model.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.isopter.model.Goldens;
import org.junit.jupiter.api.Test;

class RulesPageTest {

  @Test
  void thePageSaysWhatTheRulesSay() {
    Goldens.check(Path.of("../docs/rules.md"), RulesPage.text());
  }

  @Test
  void noTwoRulesShareAName() {
    Set<String> seen = new HashSet<>();
    List<String> twice =
        Rules.all().stream().map(ConsistencyRule::id).filter(id -> !seen.add(id)).toList();
    assertEquals(List.of(), twice);
  }

  @Test
  void whatAndWhyAreSentencesAndTheRestIsNot() {
    for (ConsistencyRule rule : Rules.all()) {
      assertTrue(rule.what().endsWith(".") && rule.why().endsWith("."), rule.id());
      assertTrue(!rule.wanted().endsWith(".") && !rule.suggestion().endsWith("."), rule.id());
    }
  }
}
