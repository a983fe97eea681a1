package org.isopter.task.note;

import java.security.SecureRandom;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Optional;
import org.isopter.model.entry.Ulid;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Status;

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
    return new Header(
        id(id),
        Party.of(Identifier.of(subject)),
        performer.map(Party::named),
        performed.orElseGet(() -> OffsetDateTime.now(ZoneId.systemDefault())),
        Status.FINAL,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /** Returns the id that is given, or one that sorts by time. */
  static Identifier id(Optional<String> given) {
    return Identifier.of(
        given.orElseGet(() -> Ulid.of(System.currentTimeMillis(), new SecureRandom())));
  }
}
