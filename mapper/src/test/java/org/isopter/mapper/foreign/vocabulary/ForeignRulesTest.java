package org.isopter.mapper.foreign.vocabulary;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Field;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.ReadResource;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.model.catalogue.Catalogue;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every rule takes its example and leaves its counter-example alone. */
class ForeignRulesTest {

  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());

  /** The reader of a caller who names a time. */
  private static final ForeignReader TIMED =
      new ForeignReader(
          Catalogue.standard(),
          Options.usual().performed(OffsetDateTime.parse("2026-03-02T08:00:00Z")));

  @TestFactory
  Stream<DynamicTest> takesItsExampleAndRefusesTheOther() {
    return ForeignRules.all().stream()
        .flatMap(
            rule ->
                Stream.of(
                    DynamicTest.dynamicTest(rule.id() + " takes", () -> takes(rule)),
                    DynamicTest.dynamicTest(rule.id() + " refuses", () -> refuses(rule))));
  }

  @Test
  void hasNoTwoRulesOfOneName() {
    List<String> ids = ForeignRules.all().stream().map(ForeignRule::id).toList();
    assertEquals(ids.size(), new HashSet<>(ids).size(), ids.toString());
  }

  /** The code names each rule once, and the list says of each what it takes. */
  @Test
  void isTheListOfTheRulesThatTheCodeNames() throws IllegalAccessException {
    Set<String> named = new TreeSet<>();
    for (Field id : RuleId.class.getFields()) {
      assertTrue(named.add((String) id.get(null)), () -> "twice: " + id.getName());
    }
    Set<String> listed = new TreeSet<>();
    ForeignRules.all().forEach(rule -> listed.add(rule.id()));
    assertEquals(listed, named);
  }

  @Test
  void listsEveryRuleThatItsOwnExamplesUse() {
    Set<String> used = new TreeSet<>();
    for (ForeignRule rule : ForeignRules.all()) {
      used.addAll(rules(reader(rule), rule.takes().json()));
      used.addAll(rules(reader(rule), rule.refuses().json()));
    }
    used.removeIf(id -> ForeignRules.byId(id).isPresent());
    assertEquals(Set.of(), used);
  }

  private static void takes(ForeignRule rule) {
    assertTrue(
        rules(reader(rule), rule.takes().json()).contains(rule.id()),
        () -> rule.takes().json() + "\n" + show(rule.takes().json()));
  }

  private static void refuses(ForeignRule rule) {
    assertFalse(
        rules(reader(rule), rule.refuses().json()).contains(rule.id()),
        () -> show(rule.refuses().json()));
  }

  private static ForeignReader reader(ForeignRule rule) {
    return rule.id().equals("time-performed") ? TIMED : READER;
  }

  private static Set<String> rules(ForeignReader reader, String json) {
    Set<String> rules = new TreeSet<>();
    Reading reading = reader.read(json).orThrow();
    reading.exams().stream()
        .filter(e -> e.exam().facts().size() > 1)
        .forEach(e -> rules.add(e.rule()));
    for (ReadResource read : reading.resources()) {
      if (read.outcome() instanceof ResourceOutcome.Translated translated) {
        rules.addAll(translated.rules());
      }
    }
    return rules;
  }

  private static String show(String json) {
    List<String> lines = new ArrayList<>();
    for (ReadResource read : READER.read(json).orThrow().resources()) {
      lines.add(read.name() + ": " + read.outcome());
    }
    return String.join("\n", lines);
  }
}
