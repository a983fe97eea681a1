package org.isopter.model.exam;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Site;

/**
 * What was measured, whatever came of it: the one answer to "is this the same measurement?".
 *
 * <p>Two facts are of one measurement when they agree in all of this. A second one in the same
 * examination repeats it.
 *
 * @param finding what was examined
 * @param site which eye, or both together
 * @param technique how, when stated
 * @param conditions the parts that tell two facts of one eye apart, such as the correction, in the
 *     order of the finding, as a record writes them; none where nothing was found
 * @param at the moment, whatever the clock; where it differs from that of the examination
 */
public record Measurement(
    Finding<?> finding,
    Site site,
    Optional<Concept> technique,
    List<String> conditions,
    Optional<Instant> at) {

  public Measurement {
    conditions = List.copyOf(conditions);
  }

  /** Returns what a fact is the outcome of. */
  public static Measurement of(Fact<?> fact) {
    return new Measurement(
        fact.finding(), fact.site(), fact.method(), conditions(fact), moment(fact));
  }

  /**
   * Says whether two facts speak of one measurement: what was not done was not done by any
   * technique or under any condition.
   */
  public static boolean areOfOne(Fact<?> one, Fact<?> other) {
    Measurement first = of(one);
    Measurement second = of(other);
    boolean bothFound = one.panel().isPresent() && other.panel().isPresent();
    return bothFound
        ? first.equals(second)
        : first.anyTechnique().anyConditions().equals(second.anyTechnique().anyConditions());
  }

  /** Returns the moment of a fact, where it has a time of its own. */
  static Optional<Instant> moment(Fact<?> fact) {
    return fact.at().map(OffsetDateTime::toInstant);
  }

  /** Says whether the other is the same of the fellow eye. */
  public boolean isFellowOf(Measurement other) {
    return site != other.site
        && other.equals(new Measurement(finding, site.fellow(), technique, conditions, at));
  }

  /**
   * Says whether this may be the other with less said of how it was measured: it names no
   * technique, no time or fewer of the conditions, and nothing that differs.
   */
  public boolean saysLessThan(Measurement other) {
    return !equals(other)
        && finding.equals(other.finding)
        && site == other.site
        && (technique.isEmpty() || technique.equals(other.technique))
        && (at.isEmpty() || at.equals(other.at))
        && other.conditions.containsAll(conditions);
  }

  /** Returns the measurement whenever it is made: to find it again on another day. */
  public Measurement anyTime() {
    return new Measurement(finding, site, technique, conditions, Optional.empty());
  }

  /** Returns the measurement by whatever technique. */
  public Measurement anyTechnique() {
    return new Measurement(finding, site, Optional.empty(), conditions, at);
  }

  /** Returns the measurement under whatever conditions: that of something not done has none. */
  public Measurement anyConditions() {
    return new Measurement(finding, site, technique, List.of(), at);
  }

  /**
   * Returns its name: lower case, parts apart by dots, for instance {@code
   * distance-acuity.right.unaided}.
   */
  public String name() {
    StringBuilder name = new StringBuilder(finding.id()).append('.').append(site.word());
    technique.ifPresent(how -> name.append('.').append(how.word()));
    conditions.forEach(condition -> name.append('.').append(condition));
    at.ifPresent(time -> name.append('.').append(time));
    return name.toString();
  }

  private static List<String> conditions(Fact<?> fact) {
    List<String> parts = fact.finding().distinguishing();
    if (parts.isEmpty() || fact.panel().isEmpty()) {
      return List.of();
    }
    EncodedValue value = fact.panel().orElseThrow();
    List<String> texts = new ArrayList<>();
    for (String part : parts) {
      value.found(part).ifPresent(datum -> texts.add(DatumTexts.of(datum)));
    }
    return texts;
  }
}
