package org.isopter.model.derive;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Drops;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.clinical.field.BlindSpots;
import org.isopter.model.clinical.field.FieldDetails;
import org.isopter.model.clinical.field.FieldPattern;
import org.isopter.model.clinical.field.FieldPlaces;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Seen;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** What follows from the fields: the size of the blind spots, and where a pattern may arise. */
final class FieldDerivations {

  private FieldDerivations() {}

  static Stream<Derived> of(ExamView facts) {
    return Stream.of(
            places(facts).stream(),
            facts.seen(Fields.BLIND_SPOT).flatMap(FieldDerivations::size),
            wider(facts).stream())
        .flatMap(all -> all);
  }

  private static Optional<Derived> places(ExamView facts) {
    return EyeFieldFound.of(facts, Site.RIGHT)
        .flatMap(
            right ->
                EyeFieldFound.of(facts, Site.LEFT)
                    .filter(left -> EyeFieldFound.isNews(right, left))
                    .flatMap(left -> told(facts, right, left)));
  }

  private static Optional<Derived> told(ExamView facts, EyeFieldFound right, EyeFieldFound left) {
    boolean tested = right.tested() && left.tested();
    return Optional.of(places(facts, right, left)).filter(read -> tested || isPlaced(read));
  }

  /** That a blind eye and what its fellow lost make no pattern is no news. */
  private static boolean isPlaced(Derived read) {
    return read.statement().certainty() == Certainty.SEVERAL_FIT
        || read.statement().certainty() == Certainty.ONE_FITS;
  }

  private static Derived places(ExamView facts, EyeFieldFound right, EyeFieldFound left) {
    List<Seen<?>> used = new ArrayList<>(right.from());
    used.addAll(left.from());
    // Drops that widen a pupil may make the defect or hide it.
    Optional<Seen<Pupils.AfferentDefect>> defect =
        facts
            .both()
            .only(Pupils.AFFERENT_DEFECT)
            .filter(any -> facts.notLater(Drops.DILATION, any.fact()).findAny().isEmpty());
    defect.ifPresent(used::add);
    FieldDetails details = FieldFeatureReader.details(facts, used);
    if (defect.isPresent()) {
      details = details.afferent(defect.get().value().side());
    }
    Answer<FieldPlaces.Reading> reading = FieldPlaces.of(right.field(), left.field(), details);
    return reading
            .value()
            .filter(read -> read.pattern() == FieldPattern.NO_REGION_REDUCED)
            .isPresent()
        ? full(reading.statement(), FinerFields.of(facts), used)
        : Derived.of(reading.statement(), Site.BOTH, used);
  }

  private static Derived full(Statement statement, FinerFields finer, List<Seen<?>> used) {
    finer.from().forEach(used::add);
    return Derived.of(Wordings.and(statement, finer.sentence()), Site.BOTH, used);
  }

  private static Stream<Derived> size(Seen<Fields.BlindSpot> seen) {
    return seen.value().edges().isEmpty()
        ? Stream.empty()
        : Stream.of(
            extent(seen, BlindSpots.width(seen.value())),
            extent(seen, BlindSpots.height(seen.value())));
  }

  private static Derived extent(Seen<Fields.BlindSpot> seen, Answer<BlindSpots.Extent> answer) {
    return Derived.of(answer.statement(), seen.site(), seen)
        .value(answer.value().map(BlindSpots.Extent::extent), Unit.DEGREE);
  }

  private static Optional<Derived> wider(ExamView facts) {
    return measured(facts, Site.RIGHT)
        .flatMap(right -> measured(facts, Site.LEFT).map(left -> wider(right, left)));
  }

  private static Optional<Seen<Fields.BlindSpot>> measured(ExamView facts, Site eye) {
    return facts.eye(eye).only(Fields.BLIND_SPOT, spot -> !spot.edges().isEmpty());
  }

  private static Derived wider(Seen<Fields.BlindSpot> right, Seen<Fields.BlindSpot> left) {
    Answer<BigDecimal> answer = BlindSpots.widerRight(right.value(), left.value());
    return Derived.of(answer.statement(), Site.BOTH, right, left)
        .value(answer.value(), Unit.DEGREE);
  }
}
