package org.isopter.model.derive;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.Lighting;
import org.isopter.model.answer.tissue.GlobeState;
import org.isopter.model.catalogue.Drops;
import org.isopter.model.catalogue.Globes;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.clinical.pupil.Anisocoria;
import org.isopter.model.clinical.pupil.LightNearDissociation;
import org.isopter.model.clinical.pupil.PupilReading;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Seen;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/**
 * What follows from the pupils: their difference, and the causes that fit all their signs. Nothing
 * follows from pupils on which a dilating drop may have acted, one that was given later excepted,
 * nor from two of which one is gone: what the table knows, it knows of two.
 */
final class PupilDerivations {

  private final ExamView facts;
  private final PupilPairs pairs;

  private PupilDerivations(ExamView facts) {
    this.facts = facts;
    this.pairs = new PupilPairs(facts);
  }

  static Stream<Derived> of(ExamView facts) {
    List<Seen<?>> drops = drops(facts);
    if (!drops.isEmpty()) {
      return silent(facts, "drops that widen them are recorded", drops);
    }
    List<Seen<?>> gone =
        facts
            .eyes()
            .flatMap(eye -> eye.seen(Globes.STATE, GlobeState::isSightless))
            .<Seen<?>>map(seen -> seen)
            .toList();
    return gone.isEmpty()
        ? new PupilDerivations(facts).all()
        : silent(facts, "one of the eyes is gone or shrunken", gone);
  }

  /** Returns the drops that may have acted when any of the pupils' signs was found. */
  private static List<Seen<?>> drops(ExamView facts) {
    return Stream.concat(Pupils.all().stream(), Stream.of(Drops.TEST))
        .flatMap(facts::seen)
        .flatMap(seen -> facts.notLater(Drops.DILATION, seen.fact()))
        .<Seen<?>>map(drop -> drop)
        .distinct()
        .toList();
  }

  /** Says why nothing is said, where there is something it would be said of. */
  private static Stream<Derived> silent(ExamView facts, String why, List<Seen<?>> from) {
    Statement statement =
        StatementBuilder.of("pupils.table", Citation.COMMON_PRACTICE, why)
            .<Boolean>withheld("Nothing is concluded from the pupils: " + why + ".")
            .statement();
    boolean some =
        Pupils.all().stream().anyMatch(finding -> facts.seen(finding).findAny().isPresent());
    return some ? Stream.of(Derived.of(statement, Site.BOTH, from)) : Stream.empty();
  }

  private Stream<Derived> all() {
    return Stream.of(
            Stream.of(Lighting.values()).flatMap(light -> difference(light).stream()),
            inLightAndDark().stream(),
            Site.EACH_EYE.stream().flatMap(eye -> lightAndNear(eye).stream()),
            causes().stream())
        .flatMap(all -> all);
  }

  private Optional<Derived> difference(Lighting light) {
    return pairs.in(light).map(pair -> difference(light, pair));
  }

  private static Derived difference(Lighting light, PupilPairs.Pair pair) {
    Statement statement =
        Wordings.under("In " + light.word() + " light:", pair.difference().statement());
    return Derived.of(statement, Site.BOTH, pair.sizes())
        .value(Optional.of(pair.difference().difference()), Unit.MILLIMETRE);
  }

  private Optional<Derived> inLightAndDark() {
    return pairs
        .in(Lighting.BRIGHT)
        .flatMap(bright -> pairs.in(Lighting.DIM).map(dim -> inLightAndDark(bright, dim)));
  }

  private static Derived inLightAndDark(PupilPairs.Pair bright, PupilPairs.Pair dim) {
    return Derived.of(
        Anisocoria.inLightAndDark(bright.difference(), dim.difference()).statement(),
        Site.BOTH,
        Stream.concat(bright.sizes().stream(), dim.sizes().stream()).toList());
  }

  private Optional<Derived> lightAndNear(Site eye) {
    return facts
        .eye(eye)
        .only(Pupils.DIRECT)
        .flatMap(
            light ->
                facts
                    .eye(eye)
                    .only(Pupils.NEAR)
                    .map(
                        near ->
                            Derived.of(
                                LightNearDissociation.of(light.value(), near.value()).statement(),
                                eye,
                                light,
                                near)));
  }

  /** The table is one of lesions: it is asked only where a sign of the pupils is unusual. */
  private Optional<Derived> causes() {
    PupilSignReader.Read read = PupilSignReader.of(facts, pairs);
    return read.signs().unusual().stream().anyMatch(key -> key.sign().isOfThePupils())
        ? Optional.of(Derived.of(PupilReading.of(read.signs()).statement(), Site.BOTH, read.used()))
        : Optional.empty();
  }
}
