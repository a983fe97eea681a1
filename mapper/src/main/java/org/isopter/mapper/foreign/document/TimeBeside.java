package org.isopter.mapper.foreign.document;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.json.Raw;
import org.isopter.model.value.Times;

/**
 * The time of an observation that states none: that of its report, the one that the caller names,
 * that of its visit, or when it was issued, in this order.
 *
 * @param at the time
 * @param rule the rule by which it counts
 * @param remark what is said of it in the record
 */
public record TimeBeside(OffsetDateTime at, String rule, String remark) {

  private static final Set<String> NOT_HELD = Set.of("cancelled", "entered-in-error", "planned");

  /** Returns the time, or nothing where the observation states one or nobody does. */
  public static Optional<TimeBeside> of(
      Place observation,
      Neighbours neighbours,
      Optional<Raw.Obj> report,
      ZoneId zone,
      Optional<OffsetDateTime> performed) {
    if (isStated(observation.value())) {
      return Optional.empty();
    }
    return report
        .flatMap(holder -> effective(holder, zone))
        .map(
            at ->
                new TimeBeside(at, RuleId.TIME_REPORT, "Time of the report; the test states none."))
        .or(() -> performed.map(TimeBeside::named))
        .or(() -> ofVisit(observation, neighbours, zone))
        .or(() -> issued(observation, zone));
  }

  private static TimeBeside named(OffsetDateTime at) {
    return new TimeBeside(
        at, RuleId.TIME_PERFORMED, "Time named for the whole input; the test has none.");
  }

  private static Optional<TimeBeside> issued(Place observation, ZoneId zone) {
    return parsed(observation.text("issued"), zone)
        .map(
            at ->
                new TimeBeside(
                    at, RuleId.TIME_ISSUED, "Time of issue; that of the test is not stated."));
  }

  private static Optional<TimeBeside> ofVisit(
      Place observation, Neighbours neighbours, ZoneId zone) {
    String reference = observation.child("encounter").map(e -> e.text("reference")).orElse("");
    return neighbours
        .find(observation.value(), reference)
        .filter(visit -> Neighbours.type(visit).equals("Encounter"))
        .filter(visit -> !NOT_HELD.contains(visit.string("status").orElse("")))
        .flatMap(visit -> visit.object("period"))
        .flatMap(period -> start(period, zone))
        .map(
            at ->
                new TimeBeside(
                    at, RuleId.TIME_ENCOUNTER, "Time of the visit; the test states none."));
  }

  private static boolean isStated(Raw resource) {
    return resource instanceof Raw.Obj object && object.hasNameLike("effective");
  }

  private static Optional<OffsetDateTime> effective(Raw.Obj holder, ZoneId zone) {
    return parsed(holder.string("effectiveDateTime").orElse(""), zone)
        .or(() -> holder.object("effectivePeriod").flatMap(period -> start(period, zone)));
  }

  private static Optional<OffsetDateTime> start(Raw period, ZoneId zone) {
    String start = period.string("start").orElse("");
    String end = period.string("end").orElse("");
    return !end.isEmpty() && Head.isWithinADay(start, end) ? parsed(start, zone) : Optional.empty();
  }

  private static Optional<OffsetDateTime> parsed(String text, ZoneId zone) {
    try {
      OffsetDateTime time =
          text.length() == Head.DAY
              ? LocalDate.parse(text).atStartOfDay(zone).toOffsetDateTime()
              : Times.parse(text);
      return Times.check(time).isEmpty() ? Optional.of(time) : Optional.empty();
    } catch (DateTimeException unreadable) {
      return Optional.empty();
    }
  }
}
