package org.isopter.mapper.v2;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.isopter.mapper.json.Raw;

/**
 * Who and what found a result, by HL7's map from version 2 to FHIR: the observers (OBX-16), the
 * organizations (OBX-15, OBX-23) and the instrument (OBX-18).
 *
 * @param segment the OBX segment
 */
record V2Witnesses(V2Segment segment) {

  private static final int PRODUCER = 15;
  private static final int OBSERVER = 16;
  private static final int INSTRUMENT = 18;
  private static final int ORGANIZATION = 23;

  /** Returns the performers: persons by id and name, organizations by name. */
  List<Raw> performers() {
    List<Raw> performers = new ArrayList<>();
    for (String person : segment.repetitions(OBSERVER)) {
      named("Practitioner", person(person), id(person)).ifPresent(performers::add);
    }
    for (String producer : segment.repetitions(PRODUCER)) {
      named("Organization", words(producer, 2, 1), Optional.empty()).ifPresent(performers::add);
    }
    for (String organization : segment.repetitions(ORGANIZATION)) {
      named("Organization", words(organization, 1), Optional.empty()).ifPresent(performers::add);
    }
    return performers;
  }

  /** Returns the instruments by what they are called. */
  Optional<Raw.Obj> device() {
    String names =
        segment.repetitions(INSTRUMENT).stream()
            .map(instrument -> words(instrument, 1, 2))
            .filter(name -> !name.isEmpty())
            .collect(Collectors.joining(", "));
    return names.isEmpty()
        ? Optional.empty()
        : Optional.of(V2Values.object("display", Raw.of(names)));
  }

  /** The authority of a person's id stands behind the parts of the name. */
  private Optional<Raw.Obj> id(String person) {
    String id = segment.component(person, 1);
    String authority = segment.component(person, 9).replaceAll("\\s", "-");
    Raw.Obj value = V2Values.object("value", Raw.of(id));
    return id.isEmpty()
        ? Optional.empty()
        : Optional.of(
            authority.isEmpty() ? value : value.with("system", Raw.of("urn:hl7-v2:" + authority)));
  }

  /** Given name before family name, as it is said. */
  private String person(String field) {
    return words(field, 6, 3, 4, 2, 5);
  }

  private String words(String field, int... components) {
    return Arrays.stream(components)
        .mapToObj(component -> segment.component(field, component))
        .map(String::strip)
        .filter(text -> !text.isEmpty())
        .collect(Collectors.joining(" "));
  }

  private static Optional<Raw> named(String type, String name, Optional<Raw.Obj> identifier) {
    Map<String, Raw> performer = new LinkedHashMap<>();
    performer.put("type", Raw.of(type));
    identifier.ifPresent(id -> performer.put("identifier", id));
    if (!name.isEmpty()) {
      performer.put("display", Raw.of(name));
    }
    return performer.size() == 1 ? Optional.empty() : Optional.of(new Raw.Obj(performer));
  }
}
