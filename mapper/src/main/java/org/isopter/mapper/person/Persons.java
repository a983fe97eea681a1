package org.isopter.mapper.person;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.foreign.reading.Carried;
import org.isopter.mapper.foreign.reading.ReadResource;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.table.Person;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.TextCheck;

/** What the Patient resources of a document say of the persons examined. */
public final class Persons {

  /** The codes of FHIR's AdministrativeGender. */
  private static final Set<String> SEXES = Set.of("male", "female", "other", "unknown");

  private static final Set<String> REFERENCES =
      Set.of(Canonical.identifier("reference"), "urn:ietf:rfc:3986");

  private final Map<String, Raw> patients = new HashMap<>();

  public Persons(Reading reading) {
    for (ReadResource read : reading.resources()) {
      add(read.resource());
    }
    reading.exams().forEach(exam -> exam.carried().resources().forEach(this::add));
  }

  /** Returns what is known of the person: by the Patient who it is, else by the header. */
  public Person of(Header header) {
    return header
        .subject()
        .identifier()
        .flatMap(this::patient)
        .map(
            one ->
                Person.born(
                    one.string("birthDate").flatMap(Persons::day),
                    one.string("gender").filter(SEXES::contains),
                    header.performed().toLocalDate()))
        .orElse(Person.UNKNOWN)
        .or(Person.stated(header.demographics()));
  }

  private Optional<Raw> patient(Identifier identifier) {
    // A reference stands for the person where nothing else is known of them.
    boolean reference = identifier.system().filter(REFERENCES::contains).isPresent();
    String name = reference ? identifier.value() : identifier.toString();
    return Optional.ofNullable(patients.get(name));
  }

  private void add(Carried.Whole whole) {
    if (isPatient(whole.resource())) {
      patients.putIfAbsent(whole.fullUrl(), whole.resource());
    }
  }

  private void add(Raw resource) {
    if (isPatient(resource)) {
      resource.string("id").ifPresent(id -> patients.putIfAbsent("Patient/" + id, resource));
      for (Raw.Obj identifier : resource.objects("identifier")) {
        identifier
            .string("value")
            .filter(value -> TextCheck.check(value).isEmpty())
            .map(value -> new Identifier(identifier.string("system"), value).toString())
            .ifPresent(name -> patients.putIfAbsent(name, resource));
      }
    }
  }

  private static boolean isPatient(Raw resource) {
    return resource.string("resourceType").equals(Optional.of("Patient"));
  }

  /** A birth date of a year or a month alone gives no age in whole years. */
  private static Optional<LocalDate> day(String born) {
    try {
      return Optional.of(LocalDate.parse(born));
    } catch (DateTimeException partial) {
      return Optional.empty();
    }
  }
}
