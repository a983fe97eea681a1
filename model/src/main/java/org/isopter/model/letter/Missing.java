package org.isopter.model.letter;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.text.FactText;
import org.isopter.model.text.PlainWords;

/** What has no result, and why: eyes that miss the same for the same reason share a line. */
final class Missing {

  private record Line(String title, String reason) {}

  private Missing() {}

  static List<String> lines(Exam exam) {
    Map<Line, Set<Eyes>> lines = new LinkedHashMap<>();
    exam.facts().stream()
        .filter(fact -> fact.panel().isEmpty())
        .forEach(fact -> add(lines, fact, exam));
    return lines.entrySet().stream().map(line -> line(line.getKey(), line.getValue())).toList();
  }

  private static void add(Map<Line, Set<Eyes>> lines, Fact<?> fact, Exam exam) {
    Line line = new Line(fact.finding().title(), FactText.of(fact, exam.header().performed()));
    lines
        .computeIfAbsent(line, any -> EnumSet.noneOf(Eyes.class))
        .add(Eyes.of(fact.finding(), fact.site()));
  }

  private static String line(Line line, Set<Eyes> eyes) {
    String where =
        Eyes.joined(eyes).stream()
            .map(Missing::words)
            .filter(words -> !words.isEmpty())
            .map(words -> ", " + words)
            .collect(Collectors.joining());
    return line.title() + where + ": " + PlainWords.sentence(line.reason());
  }

  /** What neither eye has, either eye lacks. */
  private static String words(Eyes eyes) {
    return eyes == Eyes.EACH ? "either eye" : eyes.words();
  }
}
