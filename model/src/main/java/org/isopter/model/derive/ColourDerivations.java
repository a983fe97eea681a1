package org.isopter.model.derive;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.clinical.colour.ColourPlates;
import org.isopter.model.clinical.colour.PlateRule;
import org.isopter.model.clinical.colour.PlateVerdict;
import org.isopter.model.clinical.colour.RedSaturation;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Seen;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Result;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** What follows from colour plates under named rules, and from a red target. */
final class ColourDerivations {

  private ColourDerivations() {}

  static Stream<Derived> of(ExamView facts, List<PlateRule> rules) {
    return Stream.concat(
        facts.seen(Colours.PLATES).flatMap(seen -> rules.stream().map(rule -> plates(seen, rule))),
        red(facts).stream());
  }

  private static Derived plates(Seen<Colours.Plates> seen, PlateRule rule) {
    Result<Answer<PlateVerdict>> verdict = ColourPlates.verdict(seen.value(), rule);
    Statement said =
        verdict.isOk()
            ? verdict.orThrow().statement()
            : Wordings.refused("colour.plates", verdict.faults(), rule.source());
    return Derived.of(said, seen.site(), seen);
  }

  private static Optional<Derived> red(ExamView facts) {
    return facts
        .eye(Site.RIGHT)
        .only(Colours.RED_SATURATION)
        .flatMap(
            right ->
                facts.eye(Site.LEFT).only(Colours.RED_SATURATION).map(left -> red(right, left)));
  }

  private static Derived red(Seen<Quantity> right, Seen<Quantity> left) {
    Result<RedSaturation> compared = RedSaturation.of(right.value().value(), left.value().value());
    if (!compared.isOk()) {
      return Derived.of(
          Wordings.refused("colour.red-saturation", compared.faults(), Citation.COMMON_PRACTICE),
          Site.BOTH,
          right,
          left);
    }
    RedSaturation red = compared.orThrow();
    return Derived.of(red.statement(), Site.BOTH, right, left)
        .value(Optional.of(red.ratio()), Unit.ONE);
  }
}
