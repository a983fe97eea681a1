package org.isopter.model.letter;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Fact;
import org.isopter.model.text.Eyes;
import org.isopter.model.text.FactText;
import org.isopter.model.text.FactWords;
import org.isopter.model.text.PlainWords;

/**
 * What has no result, and why: one line for each reason and eyes. The afferent defect has a line of
 * its own elsewhere.
 */
final class Missing {

  /** What was not found: finding, with technique, time and remarks; and why. */
  private record Gap(String reason, String what) {}

  private Missing() {}

  static List<String> lines(Exam exam) {
    Map<Gap, Set<Eyes>> gaps = new LinkedHashMap<>();
    ExamView.of(exam)
        .entries()
        .<Fact<?>>map(ExamView.Named::fact)
        .filter(fact -> fact.panel().isEmpty() && fact.finding() != Pupils.AFFERENT_DEFECT)
        .forEach(fact -> add(gaps, fact, exam));
    Map<String, List<String>> lines = new LinkedHashMap<>();
    gaps.forEach(
        (gap, eyes) ->
            lines
                .computeIfAbsent(gap.reason() + where(eyes), any -> new ArrayList<>())
                .add(gap.what()));
    return lines.entrySet().stream()
        .map(line -> PlainWords.sentence(line.getKey() + ": " + String.join("; ", line.getValue())))
        .toList();
  }

  private static void add(Map<Gap, Set<Eyes>> gaps, Fact<?> fact, Exam exam) {
    FactWords said = FactText.words(fact, exam.header().performed());
    String context = FactText.context(said);
    String what =
        PlainWords.lower(fact.finding().title())
            + (context.isEmpty() ? "" : ", " + context)
            + FactText.remarks(said);
    Gap gap = new Gap(PlainWords.capital(said.value("")), what);
    gaps.computeIfAbsent(gap, any -> EnumSet.noneOf(Eyes.class))
        .add(Eyes.of(fact.finding(), fact.site()));
  }

  private static String where(Set<Eyes> eyes) {
    return Eyes.joined(eyes).stream()
        .map(Eyes::lacking)
        .filter(words -> !words.isEmpty())
        .map(words -> ", " + words)
        .collect(Collectors.joining());
  }
}
