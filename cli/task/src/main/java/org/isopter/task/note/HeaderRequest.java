package org.isopter.task.note;

import java.security.SecureRandom;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.model.entry.Ulid;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Status;
import org.isopter.model.note.habit.Habits;
import org.isopter.model.note.habit.Settings;
import org.isopter.model.value.FaultException;
import org.isopter.task.report.UsageException;

/**
 * What stands above a new record.
 *
 * @param id its own id; empty to make one that sorts by time
 * @param subject the id of the person examined
 * @param performed when; empty for now
 * @param performer the name of who examined; empty where it is not known
 */
public record HeaderRequest(
    Optional<String> id,
    String subject,
    Optional<OffsetDateTime> performed,
    Optional<String> performer) {

  /** Returns a request for a record of a person who is examined now. */
  public static HeaderRequest of(String subject) {
    return new HeaderRequest(Optional.empty(), subject, Optional.empty(), Optional.empty());
  }

  /** Returns the header of a final record; each call makes another id where none is given. */
  public Header header() {
    return header(Habits.none().settings());
  }

  /**
   * Returns the same with what holds for all records of a department, where nothing else is said.
   *
   * @throws UsageException when an id or a name cannot stand in a record
   * @throws java.time.DateTimeException when nobody knows the time zone
   */
  public Header header(Settings department) {
    ZoneId zone = department.zone().map(ZoneId::of).orElseGet(ZoneId::systemDefault);
    return new Header(
        id(id, department),
        Party.of(in(department.subjectSystem(), named("--subject", subject, Identifier::of))),
        performer.or(department::performer).map(name -> named("--performer", name, Party::named)),
        performed.orElseGet(() -> OffsetDateTime.now(zone).truncatedTo(ChronoUnit.SECONDS)),
        Status.FINAL,
        department.setting(),
        Optional.empty(),
        Optional.empty());
  }

  private static Identifier in(Optional<String> system, Identifier id) {
    return new Identifier(system, id.value());
  }

  /** Returns the id that is given, or one that sorts by time, as the department gives them out. */
  static Identifier id(Optional<String> given, Settings department) {
    Identifier id =
        given
            .map(value -> named("--id", value, Identifier::of))
            .orElseGet(
                () -> Identifier.of(Ulid.of(System.currentTimeMillis(), new SecureRandom())));
    return in(department.idSystem(), id);
  }

  private static <T> T named(String option, String value, Function<String, T> made) {
    try {
      return made.apply(value);
    } catch (FaultException refused) {
      throw new UsageException(refused.faults().get(0).at(option).toString());
    }
  }
}
