package org.isopter.model.derive;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.MeridianDifference;
import org.isopter.model.answer.sight.MissedSide;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.FieldFeatures;
import org.isopter.model.catalogue.Perimetry;
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

  private static final List<Finding<?>> MEASURED =
      List.of(
          Perimetry.MEAN_DEVIATION,
          Perimetry.PATTERN_DEVIATION,
          Perimetry.FIELD_INDEX,
          FieldFeatures.ISOPTER);

  private final List<Seen<?>> from = new ArrayList<>();
  private final List<String> found = new ArrayList<>();
  private final List<Seen<?>> measured = new ArrayList<>();

  private FinerFields() {}

  static FinerFields of(ExamView facts) {
    FinerFields finer = new FinerFields();
    facts.eyes().forEach(finer::eye);
    facts.eyes().forEach(finer::perimetry);
    finer.missed(facts, FieldFeatures.EXTINCTION, " is missed when both sides are shown");
    finer.missed(facts, FieldFeatures.NEGLECT, " is not attended to");
    return finer;
  }

  private void perimetry(EyeView eye) {
    MEASURED.stream().flatMap(eye::seen).forEach(measured::add);
  }

  private void missed(ExamView facts, Finding<MissedSide> finding, String how) {
    facts
        .both()
        .seen(finding, side -> side != MissedSide.NONE)
        .forEach(
            seen -> {
              from.add(seen);
              found.add("the side to the " + seen.value().word() + how);
            });
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
    return Stream.concat(from.stream(), measured.stream());
  }

  /** Returns what they say, to follow another sentence; empty where they say nothing. */
  String sentence() {
    String yet =
        found.isEmpty()
            ? ""
            : " Yet "
                + PlainWords.list(found.stream().distinct().toList())
                + ": a loss that confrontation missed is not excluded.";
    return measured.isEmpty()
        ? yet
        : yet + " Perimetry, which is recorded too, is the finer test; it is not read here.";
  }
}
