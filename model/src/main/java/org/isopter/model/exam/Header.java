package org.isopter.model.exam;

import java.time.OffsetDateTime;
import java.util.Optional;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.TextCheck;
import org.isopter.model.value.Times;

/**
 * What holds for the whole examination.
 *
 * @param id the identifier of the record
 * @param subject the person examined
 * @param demographics the age and the administrative sex of that person, as far as stated
 * @param performer the examiner, when stated
 * @param performed when it was done, with its offset from UTC
 * @param status how far the record has come
 * @param setting where it took place, when stated
 * @param amends the record that this one replaces, never itself; given exactly when the status is
 *     amended
 * @param remark a remark on the whole examination, when there is one
 */
public record Header(
    Identifier id,
    Party subject,
    Demographics demographics,
    Optional<Party> performer,
    OffsetDateTime performed,
    Status status,
    Optional<Setting> setting,
    Optional<Identifier> amends,
    Optional<String> remark) {

  public Header {
    Times.require("performed", performed);
    remark.ifPresent(text -> TextCheck.require("remark", text));
    refuseOurs("record", id);
    amends.ifPresent(old -> refuseOurs("amends", old));
    if (amends.filter(id::equals).isPresent()) {
      throw new FaultException(
          new Fault(
              "amends",
              id.toString(),
              "the id of another record, which this one replaces",
              "give the amended record an id of its own"));
    }
    if (amends.isPresent() != (status == Status.AMENDED)) {
      String seen = amends.map(old -> "amends " + old).orElse("no amends");
      throw new FaultException(
          new Fault(
              "amends",
              seen + " beside status " + status.word(),
              "the replaced record's id beside status amended, and only there",
              "set the status to amended and name the record it replaces, or neither"));
    }
  }

  /** Makes the header of a person of whom neither age nor sex is stated. */
  public Header(
      Identifier id,
      Party subject,
      Optional<Party> performer,
      OffsetDateTime performed,
      Status status,
      Optional<Setting> setting,
      Optional<Identifier> amends,
      Optional<String> remark) {
    this(id, subject, Demographics.UNKNOWN, performer, performed, status, setting, amends, remark);
  }

  /** Returns this header with the age and the sex of the person. */
  public Header with(Demographics stated) {
    return new Header(id, subject, stated, performer, performed, status, setting, amends, remark);
  }

  private static void refuseOurs(String path, Identifier id) {
    // FHIR output uses this system for a record without one; stating it would not come back.
    if (id.system().equals(Optional.of(Canonical.identifier("record")))) {
      throw new FaultException(
          Fault.of(path + ".system", Canonical.identifier("record"), "your own system, or none"));
    }
  }

  /** Returns this header of a record that was taken back; it replaces no other any more. */
  public Header enteredInError() {
    return new Header(
        id,
        subject,
        demographics,
        performer,
        performed,
        Status.ENTERED_IN_ERROR,
        setting,
        Optional.empty(),
        remark);
  }

  /** Returns a final record's header with nothing but what every record has. */
  public static Header of(Identifier id, Party subject, OffsetDateTime performed) {
    return new Header(
        id,
        subject,
        Optional.empty(),
        performed,
        Status.FINAL,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }
}
