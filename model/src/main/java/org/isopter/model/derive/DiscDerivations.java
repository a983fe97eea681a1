package org.isopter.model.derive;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.clinical.fundus.CupDisc;
import org.isopter.model.clinical.fundus.FrisenGrade;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Seen;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** What follows from the discs: their cups against each other and against the size of the disc. */
final class DiscDerivations {

  private DiscDerivations() {}

  static Stream<Derived> of(ExamView facts) {
    return Stream.of(
            facts.seen(Discs.VERTICAL_CUP).map(cup -> againstSize(facts, cup)),
            asymmetry(facts).stream(),
            facts.seen(Discs.SWELLING).flatMap(seen -> grade(seen).stream()))
        .flatMap(all -> all);
  }

  /** Without the size of the disc the answer says what that means. */
  private static Derived againstSize(ExamView facts, Seen<BigDecimal> cup) {
    Optional<Seen<Quantity>> disc = facts.eye(cup.site()).only(Discs.DIAMETER);
    Statement statement =
        CupDisc.isAboveLimit(cup.value(), disc.map(seen -> seen.value().value())).statement();
    return disc.map(seen -> Derived.of(statement, cup.site(), cup, seen))
        .orElseGet(() -> Derived.of(statement, cup.site(), cup));
  }

  private static Optional<Derived> asymmetry(ExamView facts) {
    return facts
        .eye(Site.RIGHT)
        .only(Discs.VERTICAL_CUP)
        .flatMap(
            right ->
                facts.eye(Site.LEFT).only(Discs.VERTICAL_CUP).map(left -> asymmetry(right, left)));
  }

  private static Derived asymmetry(Seen<BigDecimal> right, Seen<BigDecimal> left) {
    BigDecimal difference = right.value().subtract(left.value()).abs();
    int more = right.value().compareTo(left.value());
    String text =
        more == 0
            ? "The vertical cup-disc ratio is equal in both eyes."
            : "The vertical cup-disc ratio is greater in the %s eye by %s."
                .formatted(more > 0 ? "right" : "left", difference.toPlainString());
    Statement statement =
        new Statement(
            "disc.cup-difference",
            text + " It says little where the discs differ in size.",
            List.of(
                "right vertical cup-disc ratio " + right.value().toPlainString(),
                "left vertical cup-disc ratio " + left.value().toPlainString()),
            Certainty.COMPUTED,
            Citation.COMMON_PRACTICE);
    return Derived.of(statement, Site.BOTH, right, left).value(Optional.of(difference), Unit.ONE);
  }

  private static Optional<Derived> grade(Seen<Discs.Swelling> seen) {
    return seen.value()
        .frisen()
        .map(grade -> FrisenGrade.of(grade).orThrow().statement())
        .map(statement -> Derived.of(statement, seen.site(), seen));
  }
}
