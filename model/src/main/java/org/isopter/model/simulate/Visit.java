package org.isopter.model.simulate;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Site;

/** One visit of an invented person: what is measured that day, and the facts as they are made. */
final class Visit {

  final InventedPerson person;
  final Draw draw;
  final int months;
  private final Map<Measure, PerEye> values = new EnumMap<>(Measure.class);
  private final List<Fact<?>> facts = new ArrayList<>();

  Visit(InventedPerson person, Draw draw, int months) {
    this.person = person;
    this.draw = draw;
    this.months = months;
    for (Measure measure : Measure.values()) {
      // Nothing is measured twice on the first day: the first visit shows the stated figures.
      PerEye chance = PerEye.alike(draw, measure.likeness());
      double retest = months == 0 ? 0 : measure.retest();
      values.put(
          measure,
          new PerEye(
              value(Site.RIGHT, measure, retest * chance.right()),
              value(Site.LEFT, measure, retest * chance.left())));
    }
  }

  private double value(Site eye, Measure measure, double chance) {
    boolean best = measure == Measure.RED && !person.has(Group.NEUROPATHY, eye);
    boolean other = person.group != Group.NEUROPATHY && eye != person.side;
    return best
        ? measure.most() - (other ? person.redder : 0)
        : measure.cut(person.value(eye, measure, months) + chance);
  }

  double of(Site eye, Measure measure) {
    return java.util.Objects.requireNonNull(values.get(measure)).of(eye);
  }

  Vision vision(Site eye) {
    return Vision.of(of(eye, Measure.ACUITY));
  }

  /**
   * Tells whether a step was done; where it was not, its findings are said to be absent, or nothing
   * is said.
   */
  boolean done(VisitStep step, Finding<?>... findings) {
    if (draw.place() < step.silent()) {
      return false;
    }
    Optional<Absence> reason = step.reason(draw.place(), unableTimes());
    for (Finding<?> finding : findings) {
      reason.ifPresent(why -> absent(finding, why));
    }
    return reason.isEmpty();
  }

  /** Returns how many times as often as others this person cannot do what is asked. */
  private double unableTimes() {
    double age = person.age(months);
    double byAge =
        age < 8 ? Relation.UNABLE_YOUNG.number() : age >= 80 ? Relation.UNABLE_OLD.number() : 1;
    boolean low = Site.EACH_EYE.stream().anyMatch(eye -> of(eye, Measure.ACUITY) > 1);
    return low ? byAge * Relation.UNABLE_LOW.number() : byAge;
  }

  /** Returns the acuity of an eye without a lens, through a pupil of so many mm. */
  double unaided(Site eye, Relation pupil) {
    double blur =
        Vision.blur(of(eye, Measure.SPHERE), of(eye, Measure.CYLINDER), person.age(months));
    return Vision.acuity(of(eye, Measure.ACUITY), blur, pupil.number());
  }

  /** Returns the acuity of an eye through what is worn, in logMAR. */
  double acuity(Site eye, Correction lens) {
    return lens == Correction.UNAIDED ? unaided(eye, Relation.ROOM_PUPIL) : of(eye, Measure.ACUITY);
  }

  private void absent(Finding<?> finding, Absence why) {
    List<Site> sites = finding.sites().contains(Site.RIGHT) ? Site.EACH_EYE : Site.PAIR;
    sites.forEach(site -> facts.add(Fact.absent(finding, site, why)));
  }

  void add(Fact<?> fact) {
    facts.add(fact);
  }

  /** Adds a fact, now and then with a remark. */
  <V> void addRemarked(Fact<V> fact, List<String> phrases) {
    add(draw.chance(Likelihood.REMARK) ? fact.remarks(List.of(draw.pick(phrases))) : fact);
  }

  List<Fact<?>> facts() {
    return facts;
  }
}
