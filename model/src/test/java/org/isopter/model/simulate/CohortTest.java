package org.isopter.model.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.check.Consistency;
import org.isopter.model.check.Violation;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.value.Result;
import org.junit.jupiter.api.Test;

/** Invented examinations are the same for a seed, can be written, and do not contradict. */
class CohortTest {

  private static final Cohort MANY = new Cohort(3000, 7);

  @Test
  void oneSeedMakesTheSameExaminationsInAnyOrder() {
    Cohort cohort = new Cohort(20, 5);
    List<Exam> all = cohort.exams().toList();
    assertEquals(all, new Cohort(20, 5).exams().toList());
    assertTrue(all.containsAll(new Cohort(100, 5).exams(19)));
    assertNotEquals(all, new Cohort(20, 6).exams().toList());
  }

  @Test
  void theNextSeedIsNotTheSameClinicMovedByOne() {
    assertNotEquals(
        new Cohort(5, 5).exams(1).get(0).facts(), new Cohort(5, 6).exams(0).get(0).facts());
  }

  @Test
  void asksForPersonsThatThereAre() {
    assertThrows(IllegalArgumentException.class, () -> new Cohort(-1, 1));
    assertThrows(IllegalArgumentException.class, () -> new Cohort(3, 1).exams(3));
    assertEquals(0, new Cohort(0, 1).exams().count());
  }

  @Test
  void noRuleFindsThemImpossibleOrContradictory() {
    Map<String, Long> reported =
        MANY.exams()
            .flatMap(exam -> Consistency.check(exam).stream())
            .map(violation -> line(violation))
            .collect(Collectors.groupingBy(id -> id, TreeMap::new, Collectors.counting()));
    assertEquals(Map.of(), reported);
  }

  private static String line(Violation violation) {
    return violation.rule().id() + ": " + violation.rule().kind();
  }

  @Test
  void everyValueIsOneThatTheCatalogueTakes() {
    MANY.exams().limit(2000).flatMap(exam -> exam.facts().stream()).forEach(CohortTest::readsBack);
  }

  private static <V> void readsBack(Fact<V> fact) {
    assertTrue(Catalogue.standard().byId(fact.finding().id()).isPresent());
    fact.panel()
        .ifPresent(
            panel -> {
              Result<Fact<V>> back = Fact.decode(fact.finding(), fact.site(), panel);
              assertEquals(fact.outcome(), back.orThrow().outcome(), fact::toString);
            });
  }

  @Test
  void subjectsHaveIdentifiersAndSomeFactsHaveFreeText() {
    List<Exam> exams = MANY.exams().limit(500).toList();
    assertTrue(exams.stream().allMatch(e -> e.header().subject().identifier().isPresent()));
    assertTrue(exams.stream().anyMatch(e -> e.header().performer().isPresent()));
    List<Fact<?>> facts = exams.stream().<Fact<?>>flatMap(e -> e.facts().stream()).toList();
    assertTrue(facts.stream().anyMatch(fact -> !fact.remarks().isEmpty()));
    assertTrue(facts.stream().map(Fact::device).anyMatch(Optional::isPresent));
    assertTrue(facts.stream().map(Fact::at).anyMatch(Optional::isPresent));
    long ids = exams.stream().map(exam -> exam.header().id()).distinct().count();
    assertEquals(exams.size(), ids);
  }
}
