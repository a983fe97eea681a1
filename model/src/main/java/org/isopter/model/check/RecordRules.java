package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.contradictory;
import static org.isopter.model.check.ConsistencyRule.implausible;
import static org.isopter.model.check.ConsistencyRule.incomplete;

import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.tissue.GlobeState;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Alignments;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.catalogue.Globes;
import org.isopter.model.catalogue.Lids;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.check.sight.Sight;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Measurement;
import org.isopter.model.exam.Seen;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;

/** Rules about the record as such: one eye alone, things said twice, times. */
final class RecordRules {

  /** The findings that are of little use for one eye alone. */
  private static final List<Finding<?>> OF_BOTH_EYES =
      List.of(
          Acuities.DISTANCE,
          Pupils.DIRECT,
          Fields.CONFRONTATION,
          Pressures.INTRAOCULAR,
          Discs.VERTICAL_CUP);

  /** The findings of which an eye has one at a time; a second reading is no second value. */
  private static final List<Finding<?>> ONE_AT_A_TIME =
      List.of(
          Pupils.EQUALITY,
          Pupils.DIRECT,
          Pupils.CONSENSUAL,
          Pupils.NEAR,
          Pupils.AFFERENT_DEFECT,
          Discs.MARGIN,
          Discs.SWELLING,
          Discs.VENOUS_PULSATION,
          Lids.PTOSIS,
          Lids.SWEATING);

  /** What needs an eye; the lids and the sweating of the face do not. */
  private static final List<Finding<?>> OF_A_GLOBE =
      Catalogue.standard().all().stream()
          .filter(finding -> !finding.sites().equals(Site.PAIR))
          .filter(
              finding ->
                  finding != Globes.STATE
                      && finding != Lids.PTOSIS
                      && finding != Lids.FISSURE
                      && finding != Lids.LEVATOR
                      && finding != Lids.SWEATING
                      && finding != Alignments.PROTRUSION)
          .toList();

  private static final Duration DAY = Duration.ofHours(24);

  private RecordRules() {}

  static List<ConsistencyRule> all() {
    return List.of(
        oneEyeOnly(), saidTwice(), absentAndFound(), farInTime(), inTheFuture(), ofNoEye());
  }

  private static Finding<?>[] array(List<Finding<?>> findings) {
    return findings.toArray(Finding<?>[]::new);
  }

  private static ConsistencyRule oneEyeOnly() {
    return incomplete("one-eye-only", Severity.INFORMATION)
        .what("A key finding is stated for one eye, and nothing is said of its fellow.")
        .why("Nothing said is not the same as normal; a reader cannot tell it from forgotten.")
        .on(array(OF_BOTH_EYES))
        .wanted("the fellow eye too, or why it was not examined")
        .suggest("add the fellow eye, if only { absent: not-done }")
        .eachEye(
            eye ->
                OF_BOTH_EYES.stream()
                    .filter(finding -> !eye.fellow().has(Globes.STATE, GlobeState::isGone))
                    .filter(finding -> isSilent(eye.fellow(), finding))
                    .flatMap(finding -> first(eye, finding)));
  }

  /** What lies beyond a line or a scale is a result too. */
  private static boolean isSilent(EyeView eye, Finding<?> finding) {
    boolean beyond =
        (finding == Acuities.DISTANCE && !eye.isSilentOn(Acuities.BOUND))
            || (finding == Pressures.INTRAOCULAR && !eye.isSilentOn(Pressures.BEYOND));
    return eye.isSilentOn(finding) && !beyond;
  }

  private static <V> Stream<Breach> first(EyeView eye, Finding<V> finding) {
    return eye.seen(finding).limit(1).map(Breach::of);
  }

  private static ConsistencyRule saidTwice() {
    return contradictory("said-twice", Severity.WARNING)
        .what("One thing is stated twice for one eye and one time, with different values.")
        .why("An eye has one of these at a time, and a reader cannot choose.")
        .on(array(ONE_AT_A_TIME))
        .wanted("one value, or a time of its own for each")
        .suggest("remove one, or state when each was found")
        .everywhere(eye -> ONE_AT_A_TIME.stream().flatMap(finding -> contradicted(eye, finding)));
  }

  private static <V> Stream<Breach> contradicted(EyeView eye, Finding<V> finding) {
    List<Seen<V>> seen = eye.seen(finding).toList();
    return seen.stream()
        .flatMap(
            one ->
                seen.subList(0, seen.indexOf(one)).stream()
                    .filter(before -> isOther(one, before))
                    .limit(1)
                    .map(before -> Breach.of(one, before)));
  }

  private static boolean isOther(Seen<?> one, Seen<?> before) {
    return Measurement.of(one.fact()).equals(Measurement.of(before.fact()))
        && !one.value().equals(before.value());
  }

  private static ConsistencyRule absentAndFound() {
    return contradictory("absent-but-found", Severity.WARNING)
        .what("A finding is absent for a reason, and beside it there is a value of that time.")
        .why("What was not done has no value; a reader cannot tell which of them holds.")
        .on(array(ONE_AT_A_TIME))
        .wanted("a value, or a reason, not both")
        .suggest("remove one, or state when each was so")
        .everywhere(eye -> ONE_AT_A_TIME.stream().flatMap(finding -> absentAndFound(eye, finding)));
  }

  private static <V> Stream<Breach> absentAndFound(EyeView eye, Finding<V> finding) {
    return eye.facts(finding)
        .filter(fact -> fact.outcome() instanceof Outcome.Absent<V>)
        .flatMap(
            absent ->
                eye.seen(finding)
                    .filter(seen -> Seen.isOfOneMoment(seen.fact(), absent))
                    .limit(1)
                    .map(seen -> Breach.of(absent, seen.fact())));
  }

  private static ConsistencyRule farInTime() {
    return implausible("time-far-from-exam", Severity.WARNING)
        .what("A fact has a time of its own more than 24 hours from that of the examination.")
        .why("Findings of another day belong to another record; a slip of the date is likelier.")
        .onAll()
        .wanted("a time within 24 hours of the examination")
        .suggest("correct the date, or move the fact into a record of its day")
        .everywhere(
            eye ->
                eye.entries()
                    .<Fact<?>>map(ExamView.Named::fact)
                    .filter(fact -> isFar(eye.exam().exam(), fact))
                    .map(fact -> Breach.of(fact).in("at")));
  }

  private static boolean isFar(Exam exam, Fact<?> fact) {
    OffsetDateTime performed = exam.header().performed();
    return fact.at()
        .filter(time -> Duration.between(performed, time).abs().compareTo(DAY) > 0)
        .isPresent();
  }

  private static ConsistencyRule inTheFuture() {
    return implausible("exam-in-the-future", Severity.WARNING)
        .what("The examination has a time more than 24 hours after that of this machine.")
        .why("Nobody has examined yet; a slip of the year, or a clock that is wrong, is likelier.")
        .onAll()
        .wanted("a time that has passed")
        .suggest("correct performed; dates that were shifted on purpose may lie ahead")
        .pair(
            both ->
                both.exam()
                    .entries()
                    .limit(1)
                    .filter(any -> isAhead(both.exam().exam().header().performed()))
                    .map(first -> inTheFuture(both.exam().exam(), first.fact())));
  }

  private static boolean isAhead(OffsetDateTime performed) {
    return performed.toInstant().isAfter(Instant.now().plus(DAY));
  }

  private static Breach inTheFuture(Exam exam, Fact<?> first) {
    return new Breach(first, Optional.empty(), "performed " + exam.header().performed());
  }

  private static ConsistencyRule ofNoEye() {
    return contradictory("finding-of-removed-eye", Severity.ERROR)
        .what("There is no eye in the socket, and something was found in or on that eye.")
        .why("Only the lids and the socket are left to examine.")
        .onAll()
        .wanted("no finding but of the lids, and no light perception")
        .suggest("check which eye was removed, and which one was examined")
        .eachEye(
            eye ->
                eye.seen(Globes.STATE, GlobeState::isGone)
                    .flatMap(
                        none ->
                            Stream.concat(
                                    OF_A_GLOBE.stream()
                                        .flatMap(finding -> first(eye, finding, none)),
                                    defect(eye, none))
                                .limit(1)));
  }

  private static Stream<Breach> defect(EyeView eye, Seen<?> none) {
    return eye.exam()
        .both()
        .seen(Pupils.AFFERENT_DEFECT, defect -> defect.side() == Reflexes.side(eye))
        .map(seen -> Breach.of(seen, none));
  }

  private static <V> Stream<Breach> first(EyeView eye, Finding<V> finding, Seen<?> none) {
    return eye.seen(finding)
        .filter(seen -> !isBlindness(seen.value()))
        .limit(1)
        .map(seen -> Breach.of(seen, none));
  }

  private static boolean isBlindness(Object value) {
    return value instanceof AcuityReading reading && Sight.isNoLight(reading);
  }
}
