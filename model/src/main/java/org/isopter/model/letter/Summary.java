package org.isopter.model.letter;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.text.PlainWords;
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
   * @param words how a fact is put, at the time of the examination
   */
  public static Summary of(Exam exam, BiFunction<Fact<?>, OffsetDateTime, String> words) {
    OffsetDateTime performed = exam.header().performed();
    Function<Fact<?>, String> put = fact -> words.apply(fact, performed);
    Conclusions conclusions = Conclusions.of(exam);
    return new Summary(
        exam,
        rows(exam, put),
        together(exam, put),
        Missing.lines(exam),
        conclusions.sentences(),
        conclusions.sources());
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
        .map(fact -> subject(fact) + ": " + PlainWords.sentence(words.apply(fact)))
        .toList();
  }

  private static String subject(Fact<?> fact) {
    String eyes = Eyes.of(fact.finding(), fact.site()).words();
    return fact.finding().title() + (eyes.isEmpty() ? "" : ", " + eyes);
  }

  private static boolean isFound(Fact<?> fact) {
    return fact.panel().isPresent();
  }
}
