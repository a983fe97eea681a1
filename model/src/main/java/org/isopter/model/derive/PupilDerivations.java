package org.isopter.model.derive;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.pupil.Lighting;
import org.isopter.model.answer.pupil.PupilResponse;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.clinical.pupil.Anisocoria;
import org.isopter.model.clinical.pupil.LightNearDissociation;
import org.isopter.model.clinical.pupil.PupilInequality;
import org.isopter.model.clinical.pupil.PupilSigns;
import org.isopter.model.clinical.pupil.PupilState;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Seen;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** What follows from the pupils: their difference, and the states that fit all their signs. */
final class PupilDerivations {

  /** A difference in one light, and the two sizes it is of. */
  private record Pair(Anisocoria difference, List<Seen<?>> sizes) {}

  private static final Set<PupilResponse> USUAL =
      EnumSet.of(PupilResponse.BRISK, PupilResponse.REACTIVE);

  private final ExamView facts;

  private PupilDerivations(ExamView facts) {
    this.facts = facts;
  }

  static Stream<Derived> of(ExamView facts) {
    PupilDerivations pupils = new PupilDerivations(facts);
    return Stream.of(
            Stream.of(Lighting.values()).flatMap(light -> pupils.difference(light).stream()),
            pupils.inLightAndDark().stream(),
            Site.EACH_EYE.stream().flatMap(eye -> pupils.lightAndNear(eye).stream()),
            pupils.states().stream())
        .flatMap(all -> all);
  }

  private Optional<Derived> difference(Lighting light) {
    return pair(light)
        .map(
            pair ->
                Derived.of(
                        Wordings.under(
                            "In " + light.word() + " light:", pair.difference().statement()),
                        Site.BOTH,
                        pair.sizes())
                    .value(Optional.of(pair.difference().difference()), Unit.MILLIMETRE));
  }

  private Optional<Pair> pair(Lighting light) {
    return size(Site.RIGHT, light)
        .flatMap(right -> size(Site.LEFT, light).flatMap(left -> pair(right, left)));
  }

  private Optional<Seen<Pupils.Size>> size(Site eye, Lighting light) {
    return facts.eye(eye).only(Pupils.SIZE, size -> size.lighting() == light);
  }

  private static Optional<Pair> pair(Seen<Pupils.Size> right, Seen<Pupils.Size> left) {
    return Optional.of(
        new Pair(
            Anisocoria.of(right.value().diameter().value(), left.value().diameter().value())
                .orThrow(),
            List.of(right, left)));
  }

  private Optional<Derived> inLightAndDark() {
    return pair(Lighting.BRIGHT)
        .flatMap(
            bright ->
                pair(Lighting.DIM)
                    .map(
                        dim ->
                            Derived.of(
                                Anisocoria.inLightAndDark(bright.difference(), dim.difference())
                                    .statement(),
                                Site.BOTH,
                                Stream.concat(bright.sizes().stream(), dim.sizes().stream())
                                    .toList())));
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

  /** The table is one of lesions: it is asked only where a sign departs from the usual. */
  private Optional<Derived> states() {
    List<Seen<?>> used = new ArrayList<>();
    PupilSigns.Pupil right = pupil(Site.RIGHT, used);
    PupilSigns.Pupil left = pupil(Site.LEFT, used);
    PupilSigns signs = new PupilSigns(right, left, inequality(used), afferent(used));
    return Optional.of(signs)
        .filter(PupilDerivations::isUnusual)
        .map(known -> Derived.of(PupilState.fitting(known).statement(), Site.BOTH, used));
  }

  private static boolean isUnusual(PupilSigns signs) {
    return signs.inequality().filter(found -> found != PupilInequality.NONE).isPresent()
        || signs.afferent().filter(side -> side != DefectSide.NONE).isPresent()
        || Stream.of(signs.right(), signs.left())
            .flatMap(one -> Stream.of(one.direct(), one.consensual(), one.near()))
            .flatMap(Optional::stream)
            .anyMatch(answer -> !USUAL.contains(answer));
  }

  private PupilSigns.Pupil pupil(Site eye, List<Seen<?>> used) {
    return new PupilSigns.Pupil(
        response(Pupils.DIRECT, eye, used),
        response(Pupils.CONSENSUAL, eye, used),
        response(Pupils.NEAR, eye, used));
  }

  private Optional<PupilResponse> response(
      Finding<PupilResponse> finding, Site eye, List<Seen<?>> used) {
    return use(facts.eye(eye).only(finding), used);
  }

  private Optional<PupilInequality> inequality(List<Seen<?>> used) {
    Optional<Pair> bright = pair(Lighting.BRIGHT);
    Optional<Pair> dim = pair(Lighting.DIM);
    Optional<PupilInequality> found =
        bright.flatMap(
            light ->
                dim.flatMap(
                    dark ->
                        Anisocoria.inLightAndDark(light.difference(), dark.difference()).value()));
    if (found.isPresent()) {
      Stream.of(bright, dim).flatMap(Optional::stream).map(Pair::sizes).forEach(used::addAll);
    }
    return found;
  }

  private Optional<DefectSide> afferent(List<Seen<?>> used) {
    return use(facts.eye(Site.BOTH).only(Pupils.AFFERENT_DEFECT), used)
        .map(Pupils.AfferentDefect::side);
  }

  private static <V> Optional<V> use(Optional<Seen<V>> seen, List<Seen<?>> used) {
    seen.ifPresent(used::add);
    return seen.map(Seen::value);
  }
}
