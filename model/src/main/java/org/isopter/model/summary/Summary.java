package org.isopter.model.summary;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.derive.Derivations;
import org.isopter.model.derive.Derived;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.FactKey;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Site;

/**
 * The contents of a summary: what was found, both eyes side by side; what was not; and apart from
 * that, what follows.
 *
 * @param exam the examination
 * @param rows what was found in each eye
 * @param together what was found of both eyes together, in sentences
 * @param missing what was not found, each with its reason
 * @param derived what follows, in sentences with how sure it is, its reason and its source
 * @param sources the sources that the sentences refer to by number, from 1
 */
public record Summary(
    Exam exam,
    List<Row> rows,
    List<String> together,
    List<String> missing,
    List<String> derived,
    List<String> sources) {

  private static final Set<String> TESTED_TOGETHER =
      Set.of(
          "acuity.equivalents",
          "acuity.partial-line",
          "acuity.unusual-line",
          "colour.plates",
          "near.equivalents");

  /**
   * One finding in either eye.
   *
   * @param title what was examined
   * @param right what was found in the right eye; empty where nothing was
   * @param left what was found in the left eye; empty where nothing was
   */
  public record Row(String title, String right, String left) {}

  /**
   * Returns the summary of an examination.
   *
   * @param words how a fact is put
   */
  public static Summary of(Exam exam, Function<Fact<?>, String> words) {
    List<String> sources = new ArrayList<>();
    List<String> derived = derived(exam, sources);
    return new Summary(
        exam, rows(exam, words), together(exam, words), missing(exam), derived, sources);
  }

  private static List<Row> rows(Exam exam, Function<Fact<?>, String> words) {
    return exam.facts().stream()
        .filter(fact -> fact.site() != Site.BOTH)
        .map(Fact::finding)
        .distinct()
        .map(finding -> row(exam, finding, words))
        .filter(row -> !row.right().isEmpty() || !row.left().isEmpty())
        .toList();
  }

  private static Row row(Exam exam, Finding<?> finding, Function<Fact<?>, String> words) {
    return new Row(
        finding.title(),
        cell(exam, finding, Site.RIGHT, words),
        cell(exam, finding, Site.LEFT, words));
  }

  private static String cell(
      Exam exam, Finding<?> finding, Site eye, Function<Fact<?>, String> words) {
    return exam.facts().stream()
        .filter(fact -> fact.finding() == finding && fact.site() == eye && isFound(fact))
        .map(words)
        .collect(Collectors.joining("; "));
  }

  private static List<String> together(Exam exam, Function<Fact<?>, String> words) {
    return exam.facts().stream()
        .filter(fact -> fact.site() == Site.BOTH && isFound(fact))
        .map(fact -> subject(fact) + ": " + sentence(words.apply(fact)))
        .toList();
  }

  /** Eyes that miss the same for the same reason share a line. */
  private static List<String> missing(Exam exam) {
    Map<String, List<String>> eyes = new LinkedHashMap<>();
    exam.facts().stream()
        .filter(fact -> !isFound(fact))
        .forEach(
            fact ->
                eyes.computeIfAbsent(
                        fact.finding().title() + "|" + FactWords.of(fact), any -> new ArrayList<>())
                    .add(where(fact)));
    return eyes.entrySet().stream()
        .map(
            entry -> {
              int bar = entry.getKey().indexOf('|');
              return entry.getKey().substring(0, bar)
                  + eyes(entry.getValue())
                  + ": "
                  + sentence(entry.getKey().substring(bar + 1));
            })
        .toList();
  }

  private static String eyes(List<String> where) {
    if (where.equals(List.of(""))) {
      return "";
    }
    return ", " + (where.size() == 2 ? "either eye" : String.join(", ", where));
  }

  private static String where(Fact<?> fact) {
    return fact.finding().sites().equals(Site.PAIR) ? "" : Say.eye(fact.site());
  }

  private static String subject(Fact<?> fact) {
    String where = where(fact);
    return fact.finding().title() + (where.isEmpty() ? "" : ", " + where);
  }

  /** What cannot be told is no news to the reader of a letter. */
  private static List<String> derived(Exam exam, List<String> sources) {
    Map<String, List<Derived>> alike = new LinkedHashMap<>();
    Derivations.of(exam).stream()
        .filter(one -> one.statement().certainty() != Certainty.CANNOT_TELL)
        .forEach(
            one ->
                alike
                    .computeIfAbsent(
                        subject(one) + one.statement().text(), any -> new ArrayList<>())
                    .add(one));
    return alike.values().stream()
        .map(same -> sentence(exam, same, number(same.get(0), sources)))
        .toList();
  }

  private static int number(Derived derived, List<String> sources) {
    String source = derived.statement().source().text();
    if (!sources.contains(source)) {
      sources.add(source);
    }
    return sources.indexOf(source) + 1;
  }

  private static String sentence(Exam exam, List<Derived> same, int source) {
    String eye = same.size() > 1 ? "Each eye: " : subject(same.get(0));
    if (eye.isEmpty() && same.get(0).site() != Site.BOTH) {
      eye = Say.capital(Say.eye(same.get(0).site())) + ": ";
    }
    String reason =
        Say.list(
            same.stream()
                .flatMap(one -> one.from().stream())
                .map(key -> Say.lower(fact(exam, key).finding().title()))
                .distinct()
                .toList());
    String sure = same.get(0).statement().certainty().words();
    return eye
        + same.get(0).statement().text()
        + " Because of the "
        + reason
        + "; "
        + sure
        + " ["
        + source
        + "].";
  }

  /**
   * Returns whom a statement on both eyes speaks of; a comparison of the eyes names them itself.
   */
  private static String subject(Derived derived) {
    String id = derived.statement().id();
    if (derived.site() != Site.BOTH) {
      return "";
    }
    if (id.equals("impairment.person")) {
      return "The person, by both eyes or the better one: ";
    }
    return TESTED_TOGETHER.contains(id) ? "Both eyes together: " : "";
  }

  private static Fact<?> fact(Exam exam, FactKey key) {
    return exam.facts().get(exam.keys().indexOf(key));
  }

  private static boolean isFound(Fact<?> fact) {
    Optional<?> value = fact.outcome().ifFound();
    return value.isPresent();
  }

  private static String sentence(String words) {
    return words.endsWith(".") || words.endsWith(".)") ? words : words + ".";
  }
}
