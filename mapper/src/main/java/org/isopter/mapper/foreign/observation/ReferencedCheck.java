package org.isopter.mapper.foreign.observation;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.document.Modifiers;
import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.vocabulary.Surroundings;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.foreign.vocabulary.Words;
import org.isopter.mapper.json.Raw;

/**
 * Refuses an observation of which a resource that it refers to says that it is no finding: the
 * subject is no patient, the visit did not take place, the instrument was out of order, or somebody
 * tested himself.
 */
final class ReferencedCheck {

  /** FHIR R4, EncounterStatus: those under which nobody was seen. */
  private static final Set<String> NO_VISIT = Set.of("planned", "cancelled", "entered-in-error");

  /** FHIR R4, DeviceMetricCalibrationState. */
  private static final Set<String> NOT_CALIBRATED =
      Set.of("not-calibrated", "calibration-required");

  /** FHIR R4, EventStatus: those under which nothing was done. */
  private static final Set<String> NOT_DONE = Set.of("not-done", "entered-in-error");

  /** The events of FHIR R4 of which a measurement is a part and that do not change an eye. */
  private static final Set<String> EVENTS = Set.of("Procedure", "ImagingStudy");

  private static final int DAY = "2026-03-02".length();

  /** FHIR R4, extension registry. */
  private static final String ANIMAL = "http://hl7.org/fhir/StructureDefinition/patient-animal";

  private static final Pattern TYPED = Pattern.compile("(?:.*/)?([A-Z][A-Za-z]+)/[^/]+");

  private static final Pattern LAYMAN = Pattern.compile("(.*/)?(Patient|RelatedPerson)(/[^/]+)?");

  private static final Pattern NAMED_LAYMAN =
      Pattern.compile(
          "(?i)\\b(self|patient|parent|mother|father|spouse|relative|carer|caregiver)\\b");

  /** Somebody who is named by another person. */
  private static final Pattern RELATIVE =
      Pattern.compile(
          "(?iu)\\b(mother|father|parent|spouse|husband|wife|partner|son|daughter|baby|newborn"
              + "|neonate|infant|f(o)?etus|twin|brother|sister|sibling|relative|donor|mutter|vater"
              + "|sohn|tochter|neugeborenes|mère|père|fils|fille|madre|padre|hijo|hija"
              + "|moeder|vader|zoon|dochter)\\s+(of|to|from|von|der|des|de|du|d|van)\\b"
              + "|['’]s\\s+(mother|father|son|daughter|baby|child|twin|brother|sister|newborn)\\b");

  private final Surroundings known;
  private final Words words;
  private final Predicate<String> isFamiliar;
  private final Place observation;
  private final Neighbours neighbours;

  ReferencedCheck(Vocabulary vocabulary, Place observation, Neighbours neighbours) {
    this.known = vocabulary.habits().surroundings();
    this.words = vocabulary.habits().words();
    this.isFamiliar = vocabulary::isFamiliar;
    this.observation = observation;
    this.neighbours = neighbours;
  }

  /** Refuses what is not a finding of a patient at a visit. */
  void check() throws Refusal {
    subject();
    Optional<Place> named = observation.child("encounter");
    if (named.filter(place -> !isHarmless(place.text("display"))).isPresent()) {
      throw Qualifiers.unread("/encounter", "a visit whose name is not understood");
    }
    Optional<Raw.Obj> visit = found("encounter");
    Optional<String> status = visit.flatMap(v -> v.string("status")).filter(NO_VISIT::contains);
    if (status.isPresent()) {
      throw Qualifiers.unread("/encounter", "a visit that was " + status.get());
    }
    if (visit
        .filter(v -> neighbours.differ(v, "subject", observation.value(), "subject"))
        .isPresent()) {
      throw Qualifiers.unread("/encounter", "a visit of another person");
    }
    Stream<String> kinds =
        visit.stream()
            .flatMap(v -> v.objects("type").stream())
            .flatMap(type -> names(new Raw.Obj(Map.of("code", type))));
    if (!kinds.allMatch(this::isHarmless)) {
      throw Qualifiers.unread("/encounter", "a visit whose kind is not understood");
    }
    if (visit.flatMap(v -> v.object("class")).filter(ReferencedCheck::isFromAfar).isPresent()) {
      throw Qualifiers.unread("/encounter", "a visit from afar");
    }
    for (Place performer : observation.list("performer")) {
      boolean layman =
          LAYMAN.matcher(performer.text("type")).matches()
              || LAYMAN.matcher(performer.text("reference")).matches()
              || NAMED_LAYMAN.matcher(performer.text("display")).find()
              || words.changesAll(performer.text("display")).isPresent();
      if (layman) {
        throw Qualifiers.unread(performer.at(), "a test by the patient or a relative");
      }
    }
    for (Place event : observation.list("partOf")) {
      event(event);
    }
    Optional<Place> device = observation.child("device");
    if (device.isPresent()) {
      device(device.get());
    }
  }

  /** What was measured during an operation, or after drops were given, is not what is plain. */
  private void event(Place event) throws Refusal {
    Optional<Raw.Obj> found = neighbours.find(observation.value(), event.text("reference"));
    String type = found.map(Neighbours::type).orElseGet(() -> typeOf(event));
    boolean test = EVENTS.contains(type) || type.isEmpty();
    boolean done = found.flatMap(e -> e.string("status")).filter(NOT_DONE::contains).isEmpty();
    boolean understood =
        Stream.concat(Stream.of(event.text("display")), found.stream().flatMap(this::names))
            .allMatch(this::isNameOfTest);
    if (!test || !done || !understood) {
      throw Qualifiers.unread(event.at(), "a part of an event that is not understood");
    }
  }

  private static String typeOf(Place reference) {
    String type = reference.text("type");
    Matcher named = TYPED.matcher(reference.text("reference"));
    return type.isEmpty() && named.matches() ? named.group(1) : type;
  }

  private Stream<String> names(Raw.Obj event) {
    Optional<Raw.Obj> code = event.object("code");
    return Stream.concat(
        code.flatMap(c -> c.string("text")).stream(),
        code.stream()
            .flatMap(c -> c.objects("coding").stream())
            .flatMap(c -> c.string("display").stream()));
  }

  private boolean isNameOfTest(String name) {
    return isHarmless(name) && (isFamiliar.test(name) || known.categorises(name));
  }

  private boolean isHarmless(String name) {
    return !words.doubts(name) && words.otherwise(name, "").isEmpty();
  }

  private Optional<Raw.Obj> found(String name) {
    return observation
        .child(name)
        .flatMap(place -> neighbours.find(observation.value(), place.text("reference")));
  }

  /** HL7 v3-ActCode: nobody of the department was with the patient. */
  private static boolean isFromAfar(Raw.Obj kind) {
    return kind.string("code").filter("VR"::equals).isPresent();
  }

  private void subject() throws Refusal {
    if (observation.child("subject").filter(s -> isOfAnother(s.text("display"))).isPresent()) {
      throw Qualifiers.unread("/subject", "a subject that is no patient");
    }
    Optional<Raw.Obj> subject = found("subject");
    if (subject.isEmpty()) {
      return;
    }
    String type = Neighbours.type(subject.get());
    if (!type.equals("Patient")) {
      throw Qualifiers.unread("/subject", "a subject that is no patient: " + type);
    }
    if (isBornAfter(subject.get())) {
      throw Qualifiers.unread("/subject", "a patient who was born later");
    }
    if (isDeadBefore(subject.get())) {
      throw Qualifiers.unread("/subject", "a patient who had died before");
    }
    if (subject.get().get("modifierExtension").isPresent()) {
      throw Qualifiers.unread("/subject", "a modifier extension of the patient");
    }
    if (subject.get().objects("extension").stream().anyMatch(ReferencedCheck::isOfAnimal)) {
      throw Qualifiers.unread("/subject", "an animal");
    }
    List<Raw.Obj> labels = subject.get().object("meta").orElse(Raw.Obj.EMPTY).objects("security");
    for (Raw.Obj label : labels) {
      String code = label.string("code").orElse("");
      if (known.isLabelOfDoubt(label.string("system").orElse("") + "|" + code)) {
        throw Qualifiers.unread("/subject", "a patient with the label " + code);
      }
    }
  }

  private boolean isOfAnother(String name) {
    return words.doubts(name) || RELATIVE.matcher(name).find();
  }

  private boolean isBornAfter(Raw.Obj patient) {
    String born = day(patient.string("birthDate").orElse(""));
    String tested = day(observation.text("effectiveDateTime"));
    return born.length() == DAY && tested.length() == DAY && born.compareTo(tested) > 0;
  }

  /** On an earlier day: of one day the hours may be in two time zones. */
  private boolean isDeadBefore(Raw.Obj patient) {
    String died = day(patient.string("deceasedDateTime").orElse(""));
    String tested = day(observation.text("effectiveDateTime"));
    return died.length() == DAY && tested.length() == DAY && died.compareTo(tested) < 0;
  }

  private static String day(String time) {
    return time.substring(0, Math.min(DAY, time.length()));
  }

  private static boolean isOfAnimal(Raw.Obj extension) {
    return extension.string("url").filter(ANIMAL::equals).isPresent();
  }

  private void device(Place reference) throws Refusal {
    String name = reference.text("display");
    if (!isHarmless(name) || words.changesAll(name).isPresent()) {
      throw Qualifiers.unread(reference.at(), "an instrument whose name says more");
    }
    Optional<Raw.Obj> device = found("device");
    if (device.isPresent()) {
      device(device.get());
    }
  }

  private void device(Raw.Obj device) throws Refusal {
    boolean retracted = device.string("status").equals(Optional.of("entered-in-error"));
    boolean off =
        device.objects("calibration").stream()
            .flatMap(calibration -> calibration.string("state").stream())
            .anyMatch(NOT_CALIBRATED::contains);
    boolean doubted =
        device.objects("note").stream()
            .flatMap(note -> note.string("text").stream())
            .anyMatch(words::doubts);
    boolean named =
        device.objects("deviceName").stream()
            .flatMap(name -> name.string("name").stream())
            .allMatch(name -> isHarmless(name) && words.changesAll(name).isEmpty());
    if (!named || retracted || off || doubted || Modifiers.mayHold(device, "modifierExtension")) {
      throw Qualifiers.unread("/device", "an instrument that may have been out of order");
    }
  }
}
