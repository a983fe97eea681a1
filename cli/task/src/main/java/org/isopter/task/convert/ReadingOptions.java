package org.isopter.task.convert;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Optional;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.foreign.run.Intake;
import org.isopter.mapper.foreign.run.Policy;
import org.isopter.mapper.foreign.run.Receiver;
import org.isopter.mapper.foreign.run.Together;
import org.isopter.mapper.foreign.vocabulary.DepartmentAliases;
import org.isopter.mapper.json.Limits;
import org.isopter.mapper.pool.PoolReader;
import org.isopter.model.catalogue.Catalogue;

/**
 * How FHIR of any system is to be read.
 *
 * @param release its release
 * @param zone the time zone of a day without an hour, and of a time of a message without an offset;
 *     empty for days in UTC
 * @param window how far apart observations of one person may lie and still be one examination
 * @param policy what to do with what no rule takes
 * @param together what is read together, so that one resource may refer to another
 * @param largest the most megabytes of a document
 * @param performed the time of what states none
 * @param aliases codes and words of the department
 */
public record ReadingOptions(
    Release release,
    Optional<ZoneId> zone,
    Duration window,
    Policy policy,
    Together together,
    int largest,
    Optional<OffsetDateTime> performed,
    DepartmentAliases aliases) {

  /** R4; a day begins in UTC; what no rule takes is kept; documents of at most 64 MB. */
  public static final ReadingOptions USUAL =
      new ReadingOptions(
          Release.R4,
          Optional.empty(),
          Duration.ZERO,
          Policy.FAITHFUL,
          Together.FOLDER,
          64,
          Optional.empty(),
          DepartmentAliases.none());

  /** Returns these options for a reader. */
  Options options() {
    Limits usual = Limits.USUAL;
    Limits limits = new Limits(usual.depth(), usual.stringLength(), bytes());
    return new Options(zone, window, limits, performed, aliases);
  }

  /** Returns a reader of records and FHIR for a pool, which takes what rules take. */
  public PoolReader poolReader() {
    return new PoolReader(Catalogue.standard(), options(), release);
  }

  /** Returns the most bytes of a document. */
  int bytes() {
    return (int) Math.min(Math.max(1, largest) * 1_000_000L, Integer.MAX_VALUE - 8);
  }

  /** Returns an intake that hands what it read to a receiver. */
  Intake intake(Receiver receiver) {
    ForeignReader reader = new ForeignReader(Catalogue.standard(), options());
    return Intake.of(reader, release, together, receiver);
  }

  /** Returns everything that decides about the outcome, in words. */
  String asked() {
    return "%s, %s, zone %s, window %s, %d MB, together %s, performed %s, habits %s"
        .formatted(
            release,
            policy,
            zone.map(ZoneId::getId).orElse("not stated"),
            window,
            largest,
            together,
            performed.map(OffsetDateTime::toString).orElse("as stated"),
            aliases.digest());
  }
}
