package org.isopter.model.letter;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Fact;
import org.isopter.model.text.Eyes;
import org.isopter.model.text.FactText;
import org.isopter.model.text.PlainWords;

/**
 * The contents of a letter: what was found, both eyes side by side; what was not; and apart from
 * that, what follows.
 *
 * @param exam the examination
 * @param defect the relative afferent defect, in sentences; that it is not recorded, too
 * @param rows what was found in each eye
 * @param together what else was found of both eyes together, in sentences
 * @param missing what has no result, each with its reason
 * @param silent what a usual examination has and this one does not mention
 * @param derived what follows, in short sentences without arithmetic
 * @param detail all that follows, in sentences with how sure it is, its reason and its source
 * @param sources the sources that the detail refers to by number, from 1
 */
public record Summary(
    Exam exam,
    List<String> defect,
    List<Row> rows,
    List<String> together,
    List<String> missing,
    Optional<String> silent,
    List<String> derived,
    List<String> detail,
    List<String> sources) {

  /**
   * One subject in either eye.
   *
   * @param title what was examined
   * @param right what was found in the right eye; empty where nothing was
   * @param left what was found in the left eye; empty where nothing was
   */
  public record Row(String title, String right, String left) {}

  /** Returns the summary of an examination in the words of a letter. */
  public static Summary of(Exam exam) {
    Conclusions conclusions = Conclusions.of(exam);
    return new Summary(
        exam,
        defect(exam),
        rows(exam),
        together(exam),
        Missing.lines(exam),
        Unrecorded.sentence(ExamView.of(exam)),
        conclusions.brief(),
        conclusions.sentences(),
        conclusions.sources());
  }

  private static List<String> defect(Exam exam) {
    String title = Pupils.AFFERENT_DEFECT.title();
    List<String> stated =
        ExamView.of(exam)
            .both()
            .facts(Pupils.AFFERENT_DEFECT)
            .map(fact -> title + ": " + PlainWords.sentence(words(exam, fact)))
            .toList();
    return stated.isEmpty() ? List.of(title + ": not recorded.") : stated;
  }

  private static List<Row> rows(Exam exam) {
    ExamView view = ExamView.of(exam);
    return Subject.of(view).stream()
        .map(
            subject ->
                new Row(
                    subject.title(),
                    EyeCell.of(view.right(), subject),
                    EyeCell.of(view.left(), subject)))
        .filter(row -> !row.right().isEmpty() || !row.left().isEmpty())
        .toList();
  }

  private static List<String> together(Exam exam) {
    Map<String, List<String>> bySubject = new LinkedHashMap<>();
    ExamView.of(exam)
        .both()
        .entries()
        .<Fact<?>>map(ExamView.Named::fact)
        .filter(fact -> fact.panel().isPresent() && fact.finding() != Pupils.AFFERENT_DEFECT)
        .forEach(
            fact ->
                bySubject
                    .computeIfAbsent(subject(fact), any -> new ArrayList<>())
                    .add(words(exam, fact)));
    return bySubject.entrySet().stream()
        .map(one -> one.getKey() + ": " + PlainWords.sentence(String.join("; ", one.getValue())))
        .toList();
  }

  private static String words(Exam exam, Fact<?> fact) {
    return FactText.of(fact, exam.header().performed());
  }

  private static String subject(Fact<?> fact) {
    String eyes = Eyes.of(fact.finding(), fact.site()).words();
    return fact.finding().title() + (eyes.isEmpty() ? "" : ", " + eyes);
  }
}
