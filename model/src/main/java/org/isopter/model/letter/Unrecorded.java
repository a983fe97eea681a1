package org.isopter.model.letter;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.isopter.model.entry.UsualStep;
import org.isopter.model.exam.ExamView;
import org.isopter.model.text.Eyes;

/**
 * What a usual examination has and this one does not mention, not even as not done; common
 * practice, no source. Where there is no eye, nothing is missed.
 */
final class Unrecorded {

  private Unrecorded() {}

  /** Returns what is not recorded, with the eyes, in one line; empty where all is. */
  static Optional<String> sentence(ExamView exam) {
    Map<Eyes, List<String>> silent = new EnumMap<>(Eyes.class);
    UsualStep.expectedFindings()
        .forEach(
            (title, findings) ->
                UsualStep.silent(exam, findings)
                    .forEach(
                        eyes -> silent.computeIfAbsent(eyes, any -> new ArrayList<>()).add(title)));
    String list =
        silent.entrySet().stream()
            .map(line -> line.getKey().lacking() + ": " + String.join(", ", line.getValue()))
            .collect(Collectors.joining("; "));
    return list.isEmpty()
        ? Optional.empty()
        : Optional.of("Not recorded, " + list + ". This says nothing about them.");
  }
}
