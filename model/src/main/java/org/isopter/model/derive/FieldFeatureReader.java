package org.isopter.model.derive;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.isopter.model.answer.sight.Congruity;
import org.isopter.model.answer.sight.FieldBorder;
import org.isopter.model.answer.sight.Sparing;
import org.isopter.model.catalogue.FieldFeatures;
import org.isopter.model.clinical.field.FieldDetails;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;
import org.isopter.model.finding.Finding;

/**
 * Reads what a loss of field looks like besides its quadrants. What two entries or the two eyes
 * answer in different ways tells nothing, and is left out.
 */
final class FieldFeatureReader {

  private static final Set<FieldBorder> VERTICAL = Set.of(FieldBorder.VERTICAL, FieldBorder.BOTH);

  private FieldFeatureReader() {}

  /** Returns the details; the facts that they were read from are added to those used. */
  static FieldDetails details(ExamView facts, List<Seen<?>> used) {
    FieldDetails details = FieldDetails.none();
    Optional<Boolean> match =
        pair(facts, FieldFeatures.CONGRUITY, seen -> seen == Congruity.CONGRUOUS, used);
    Optional<Boolean> macula =
        pair(facts, FieldFeatures.MACULA, seen -> seen == Sparing.SPARED, used);
    Optional<Boolean> crescent =
        eyes(facts, FieldFeatures.CRESCENT, seen -> seen == Sparing.SPARED, used);
    Optional<Boolean> vertical = eyes(facts, FieldFeatures.BORDER, VERTICAL::contains, used);
    details = match.map(details::congruous).orElse(details);
    details = macula.map(details::macularSparing).orElse(details);
    details = crescent.map(details::crescentSpared).orElse(details);
    return vertical.map(details::vertical).orElse(details);
  }

  private static <V> Optional<Boolean> pair(
      ExamView facts, Finding<V> finding, Function<V, Boolean> is, List<Seen<?>> used) {
    return agreed(facts.both().seen(finding).toList(), is, used);
  }

  private static <V> Optional<Boolean> eyes(
      ExamView facts, Finding<V> finding, Function<V, Boolean> is, List<Seen<?>> used) {
    return agreed(facts.eyes().flatMap((EyeView eye) -> eye.seen(finding)).toList(), is, used);
  }

  private static <V> Optional<Boolean> agreed(
      List<Seen<V>> seen, Function<V, Boolean> is, List<Seen<?>> used) {
    Set<Boolean> answers =
        seen.stream().map(one -> is.apply(one.value())).collect(Collectors.toSet());
    if (answers.size() != 1) {
      return Optional.empty();
    }
    used.addAll(seen);
    return answers.stream().findFirst();
  }
}
