package org.isopter.model.derive;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.MeridianDifference;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.VisualFunctions;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;
import org.isopter.model.finding.Finding;
import org.isopter.model.text.PlainWords;

/**
 * What finer tests found of fields that are full by confrontation. That nothing is reduced would
 * reassure, and be wrong, where a target is weaker across the meridian or a grid has a gap.
 */
final class FinerFields {

  private static final Map<MeridianDifference, String> WEAKER =
      Map.of(
          MeridianDifference.TEMPORAL_WEAKER, "a target looks weaker in the temporal half",
          MeridianDifference.NASAL_WEAKER, "a target looks weaker in the nasal half");

  private static final Map<String, String> GRIDS =
      Map.of(
          "distorted", "the grid around fixation looks distorted",
          "gap", "the grid around fixation has a gap",
          "distorted-with-gap", "the grid around fixation has a gap and looks distorted");

  private final List<Seen<?>> from = new ArrayList<>();
  private final List<String> found = new ArrayList<>();

  private FinerFields() {}

  static FinerFields of(ExamView facts) {
    FinerFields finer = new FinerFields();
    facts.eyes().forEach(finer::eye);
    return finer;
  }

  private void eye(EyeView eye) {
    add(eye, Colours.ACROSS_MERIDIAN, WEAKER, Colours.AcrossMeridian::difference);
    add(eye, VisualFunctions.GRID, GRIDS, grid -> grid.word());
  }

  private <V, K> void add(
      EyeView eye, Finding<V> finding, Map<K, String> words, Function<V, K> key) {
    eye.seen(finding, value -> words.containsKey(key.apply(value)))
        .forEach(
            seen -> {
              from.add(seen);
              String said = words.getOrDefault(key.apply(seen.value()), "");
              found.add(said + " to the " + PlainWords.eye(eye.site()));
            });
  }

  /** Returns the facts that speak of a loss. */
  Stream<Seen<?>> from() {
    return from.stream();
  }

  /** Returns what they say, to follow another sentence; empty where they say nothing. */
  String sentence() {
    return found.isEmpty()
        ? ""
        : " Yet "
            + PlainWords.list(found.stream().distinct().toList())
            + ": a loss that confrontation missed is not excluded.";
  }
}
