package org.isopter.mapper.fhir.element;

import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Times;
import org.isopter.model.wire.ObservationMember;

/** Reads persons, identifiers and times. */
public final class People {

  private People() {}

  /**
   * Takes a person or organisation; nothing, and a fault, where it has no identifier and no name.
   */
  public static Optional<Party> party(ElementCursor reference, String type) {
    reference.expect("type", type);
    Optional<Identifier> identifier = reference.object("identifier").flatMap(People::identifier);
    Optional<String> name = reference.text("display");
    if (!reference.peek("reference").isEmpty() && type.equals("Patient")) {
      identifier
          .flatMap(PatientReference.ADDRESS::of)
          .filter(own -> own.equals(reference.peek("reference")))
          .ifPresent(own -> reference.drop("reference"));
    }
    if (identifier.isEmpty() && name.isEmpty()) {
      reference.fault("", "neither identifier nor display", "a person by identifier or name");
      return Optional.empty();
    }
    return fitting(reference, () -> new Party(identifier, name));
  }

  static Optional<Identifier> identifier(ElementCursor identifier) {
    Optional<String> system = identifier.text("system");
    Optional<String> value = identifier.text("value");
    if (value.isEmpty()) {
      identifier.fault("value", "nothing", "an identifier");
    }
    return value.flatMap(text -> fitting(identifier, () -> new Identifier(system, text)));
  }

  /** Takes the identifier of a record; our own system stands for none. */
  public static Optional<Identifier> record(ElementCursor identifier) {
    return identifier(identifier)
        .map(
            id ->
                id.system().equals(Optional.of(FrameCodes.RECORD_SYSTEM))
                    ? Identifier.of(id.value())
                    : id);
  }

  /** Takes a time with its offset; nothing, and a fault, where there is none. */
  public static Optional<OffsetDateTime> time(ElementCursor holder, String name) {
    Optional<String> text = holder.text(name);
    if (text.isEmpty()) {
      holder.fault(name, "nothing", "a date and time with offset");
      return Optional.empty();
    }
    try {
      OffsetDateTime time = Times.parse(text.get());
      Optional<Fault> far = Times.check(time);
      far.ifPresent(fault -> holder.fault(name, fault.seen(), fault.wanted()));
      return far.isPresent() ? Optional.empty() : Optional.of(time);
    } catch (DateTimeParseException unreadable) {
      holder.fault(name, "\"" + text.get() + "\"", "a time such as 2026-03-02T09:30:00+01:00");
      return Optional.empty();
    }
  }

  /** Takes what every resource of an examination says again of the person and the examiner. */
  public static void expectPeople(ElementCursor resource, Header header) {
    expectSubject(resource, header);
    expectPerformer(resource, header);
  }

  /** Takes what a resource says again of the person. */
  public static void expectSubject(ElementCursor resource, Header header) {
    String name = ObservationMember.SUBJECT.label();
    resource
        .required(name)
        .flatMap(subject -> party(subject, "Patient"))
        .filter(seen -> !seen.equals(header.subject()))
        .ifPresent(seen -> resource.fault(name, seen.toString(), header.subject().toString()));
  }

  /** Takes what a resource says again of the examiner. */
  public static void expectPerformer(ElementCursor resource, Header header) {
    String name = ObservationMember.PERFORMER.label();
    if (header.performer().isEmpty() && !resource.has(name)) {
      return;
    }
    List<Optional<Party>> seen =
        resource.objects(name).stream().map(by -> party(by, "Practitioner")).toList();
    if (!seen.equals(header.performer().map(Optional::of).stream().toList())) {
      resource.fault(name, seen.toString(), header.performer().toString());
    }
  }

  /** Returns what is made; nothing, and its faults, where the model refuses it. */
  public static <T> Optional<T> fitting(ElementCursor at, Supplier<T> make) {
    try {
      return Optional.of(make.get());
    } catch (FaultException unfit) {
      unfit.faults().forEach(fault -> at.fault(fault.within(at.path())));
      return Optional.empty();
    }
  }
}
