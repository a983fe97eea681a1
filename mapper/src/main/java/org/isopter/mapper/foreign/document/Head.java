package org.isopter.mapper.foreign.document;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Status;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Fault;
import org.isopter.model.value.TextCheck;
import org.isopter.model.value.Times;

/**
 * What an observation says apart from its finding: of whom, when, how far it has come.
 *
 * @param subject the person examined
 * @param known whether the person is known by more than a name
 * @param at when
 * @param status how far it has come
 * @param encounter the encounter it belongs to, as it is referred to
 * @param performer the only examiner, where one is named
 */
public record Head(
    Party subject,
    boolean known,
    OffsetDateTime at,
    Status status,
    Optional<String> encounter,
    Optional<Party> performer) {

  /** The length of a date. */
  static final int DAY = 10;

  private static final String REFERENCE_SYSTEM = Canonical.identifier("reference");
  private static final String UNSTATED_SYSTEM = Canonical.identifier("unstated-subject");

  /** What a subject is that is no patient. */
  private static final Pattern NOBODY =
      Pattern.compile(
          "(.*/)?(Group|Device|Location|Specimen|Medication|RelatedPerson|Practitioner"
              + "|PractitionerRole|Organization|Person)/[^/]+");

  private static final String URI_SYSTEM = "urn:ietf:rfc:3986";

  /**
   * Refuses what may turn the meaning of all of it round.
   *
   * @throws Refusal when a modifier stands there that is not understood
   */
  public static void guard(Place observation) throws Refusal {
    if (observation.has("implicitRules")) {
      throw Refusal.of(Why.MODIFIED, "/implicitRules", "implicit rules", "none");
    }
    Optional<String> modifier = Modifiers.first(observation.value());
    if (modifier.isPresent()) {
      throw Refusal.of(Why.MODIFIED, modifier.get(), "a modifier extension", "none");
    }
  }

  /**
   * Takes the status.
   *
   * @throws Refusal when the status is none under which a finding holds
   */
  public static Status status(Place observation) throws Refusal {
    String word = observation.text("status");
    if (word.equals("amended") || word.equals("corrected")) {
      // The word stays with the resource: what it replaced is not known.
      observation.ledger().used(RuleId.STATUS_AMENDED);
      return Status.FINAL;
    }
    Optional<Status> status = Status.of(word).filter(s -> s != Status.ENTERED_IN_ERROR);
    if (status.isEmpty()) {
      throw Refusal.of(
          Why.RETRACTED,
          "/status",
          word.isEmpty() ? "nothing" : "\"" + word + "\"",
          "preliminary, final, amended or corrected");
    }
    observation.take(Ledger.CATALOGUE, "status");
    return status.get();
  }

  /**
   * Takes when it was: a time with its offset, the start of a period, or a day.
   *
   * @throws Refusal when there is no time, one that is not whole, or one that is more than a day
   *     after the result was given out
   */
  public static OffsetDateTime time(Place observation, ZoneId zone) throws Refusal {
    OffsetDateTime time = stated(observation, zone);
    String issued = observation.text("issued");
    if (isBefore(issued, time.minusDays(1))) {
      throw Refusal.of(
          Why.NO_TIME, "/issued", "\"" + issued + "\"", "a result given out after it was found");
    }
    return time;
  }

  private static boolean isBefore(String instant, OffsetDateTime time) {
    try {
      return !instant.isEmpty() && Times.parse(instant).isBefore(time);
    } catch (DateTimeParseException unreadable) {
      return false;
    }
  }

  private static OffsetDateTime stated(Place observation, ZoneId zone) throws Refusal {
    for (String name : List.of("effectiveDateTime", "effectiveInstant")) {
      if (observation.has(name)) {
        return time(
            observation, name, name.equals("effectiveInstant") ? RuleId.TIME_INSTANT : "", zone);
      }
    }
    Optional<Place> period = observation.child("effectivePeriod");
    if (period.isPresent() && period.get().has("start")) {
      refuseLong(period.get());
      return time(period.get(), "start", RuleId.TIME_PERIOD_START, zone);
    }
    throw Refusal.of(
        Why.NO_TIME,
        "/effectiveDateTime",
        "nothing",
        "the time or the day of the test, of its visit or of its report");
  }

  /** A period of more than a day is no time of an examination, but when something held. */
  private static void refuseLong(Place period) throws Refusal {
    String start = period.text("start");
    String end = period.text("end");
    if (!end.isEmpty() && !isWithinADay(start, end)) {
      throw Refusal.of(
          Why.NO_TIME,
          period.at() + "/end",
          "\"" + end + "\"",
          "the end within a day of the start");
    }
  }

  /** Returns true if a period begins and ends within a day. */
  static boolean isWithinADay(String start, String end) {
    try {
      if (start.length() == DAY && end.length() == DAY) {
        return start.equals(end);
      }
      OffsetDateTime from = Times.parse(start);
      OffsetDateTime to = Times.parse(end);
      return !to.isBefore(from) && !to.isAfter(from.plusDays(1));
    } catch (DateTimeParseException unreadable) {
      return start.length() >= DAY && end.startsWith(start.substring(0, DAY));
    }
  }

  private static OffsetDateTime time(Place holder, String name, String rule, ZoneId zone)
      throws Refusal {
    String text = holder.text(name);
    try {
      if (text.length() == DAY) {
        OffsetDateTime day = LocalDate.parse(text).atStartOfDay(zone).toOffsetDateTime();
        // The day stays with the resource: that no time is known is in it alone.
        holder.ledger().used(RuleId.TIME_DAY);
        return day;
      }
      OffsetDateTime time = Times.parse(text);
      Optional<Fault> far = Times.check(time);
      if (far.isPresent()) {
        String at = PlacedLeaf.step(holder.at(), name);
        throw Refusal.of(Why.NO_TIME, at, far.get().seen(), far.get().wanted());
      }
      holder.take(rule, name);
      return time;
    } catch (DateTimeParseException unreadable) {
      String wanted = "a day, or a time with its offset such as 2026-03-02T09:30:00+01:00";
      throw Refusal.of(Why.NO_TIME, PlacedLeaf.step(holder.at(), name), "\"" + text + "\"", wanted);
    }
  }

  /**
   * Takes the person: by identifier and name, else by the resource or the address referred to.
   *
   * @throws Refusal when it names nobody, or somebody in two ways
   */
  public static Party subject(Place observation, Neighbours neighbours) throws Refusal {
    if (observation.has("focus") && !isOfSubject(observation)) {
      throw Refusal.of(Why.NO_PERSON, "/focus", "a focus", "an observation of the person alone");
    }
    Optional<Place> subject = observation.child("subject");
    if (subject.isEmpty()) {
      return unstated(observation);
    }
    String reference = subject.get().text("reference");
    refuseOthers(subject.get(), reference);
    Optional<String> name = name(subject.get());
    Optional<Identifier> identifier = subject.get().child("identifier").flatMap(Head::identifier);
    if (identifier.isEmpty() && !reference.isEmpty()) {
      identifier = Optional.of(referred(observation, neighbours, reference));
    }
    if (identifier.isEmpty() && name.isEmpty()) {
      return unstated(observation);
    }
    return new Party(identifier, name);
  }

  /** A focus that is the person observed says nothing new. */
  private static boolean isOfSubject(Place observation) {
    String subject = observation.child("subject").map(s -> s.text("reference")).orElse("");
    List<Place> focus = observation.list("focus");
    return focus.size() == 1
        && !subject.isEmpty()
        && focus.get(0).text("reference").equals(subject);
  }

  /** Returns the only examiner, by identifier or by name, without taking anything. */
  public static Optional<Party> performer(Place observation) {
    List<Place> performers = observation.list("performer");
    if (performers.size() != 1) {
      return Optional.empty();
    }
    Place performer = performers.get(0);
    String type = performer.text("type") + performer.text("reference");
    Optional<Identifier> identifier =
        performer.child("identifier").flatMap(place -> identifier(place.value()));
    Optional<String> name = fitting(performer.text("display"));
    boolean nobody = identifier.isEmpty() && name.isEmpty();
    boolean other = !type.isEmpty() && !type.contains("Practitioner");
    return nobody || other ? Optional.empty() : Optional.of(new Party(identifier, name));
  }

  /** Takes the examiner, once all observations of the examination name the same. */
  public static void takePerformer(Place observation) {
    for (Place performer : observation.list("performer")) {
      performer
          .child("identifier")
          .filter(place -> identifier(place.value()).isPresent())
          .ifPresent(place -> place.take(Ledger.CATALOGUE, "system", "value"));
      if (fitting(performer.text("display")).isPresent()) {
        performer.take(Ledger.CATALOGUE, "display");
      }
      if (performer.text("type").equals("Practitioner")) {
        performer.take(Ledger.CATALOGUE, "type");
      }
    }
  }

  private static void refuseOthers(Place subject, String reference) throws Refusal {
    String type = subject.text("type");
    boolean patient = type.isEmpty() || type.equals("Patient");
    boolean other = NOBODY.matcher(reference).matches();
    if (!patient || other) {
      String seen = (type + " " + reference).strip();
      throw Refusal.of(Why.NO_PERSON, "/subject", seen, "a patient");
    }
    subject.take(Ledger.CATALOGUE, "type");
  }

  private static Optional<String> name(Place subject) {
    Optional<String> name = fitting(subject.text("display"));
    name.ifPresent(text -> subject.take(Ledger.CATALOGUE, "display"));
    return name;
  }

  private static Optional<Identifier> identifier(Place identifier) {
    Optional<Identifier> read = identifier(identifier.value());
    read.ifPresent(id -> identifier.take(Ledger.CATALOGUE, "system", "value"));
    return read;
  }

  private static Optional<Identifier> identifier(Raw identifier) {
    Optional<String> system = identifier.string("system");
    boolean fits = system.map(text -> fitting(text).isPresent()).orElse(true);
    return fitting(identifier.string("value").orElse(""))
        .filter(value -> fits)
        .map(value -> new Identifier(system, value));
  }

  private static Identifier referred(Place observation, Neighbours neighbours, String reference) {
    Optional<Identifier> patient =
        neighbours.find(observation.value(), reference).stream()
            .filter(resource -> Neighbours.type(resource).equals("Patient"))
            .flatMap(resource -> resource.objects("identifier").stream())
            .map(Head::identifier)
            .flatMap(Optional::stream)
            .findFirst();
    if (patient.isPresent()) {
      observation.ledger().used(RuleId.SUBJECT_PATIENT);
      return patient.get();
    }
    if (reference.startsWith("#")) {
      // The same address means another person inside another observation.
      return nobody(observation);
    }
    observation.ledger().used(RuleId.SUBJECT_REFERENCE);
    String system = reference.startsWith("urn:") ? URI_SYSTEM : REFERENCE_SYSTEM;
    String address = neighbours.inFull(observation.value(), reference);
    return Identifier.of(system, fitting(address).orElse("unreadable"));
  }

  private static Party unstated(Place observation) {
    return Party.of(nobody(observation));
  }

  /** A person of whom nothing is said is never the same as another. */
  private static Identifier nobody(Place observation) {
    observation.ledger().used(RuleId.SUBJECT_UNSTATED);
    return Identifier.of(UNSTATED_SYSTEM, fingerprint(observation.value()));
  }

  /** Returns the same text for the same resource, always. */
  public static String fingerprint(Raw resource) {
    return UUID.nameUUIDFromBytes(RawJson.write(resource).getBytes(UTF_8)).toString();
  }

  private static Optional<String> fitting(String text) {
    return text.isEmpty() || TextCheck.check(text).isPresent()
        ? Optional.empty()
        : Optional.of(text);
  }
}
