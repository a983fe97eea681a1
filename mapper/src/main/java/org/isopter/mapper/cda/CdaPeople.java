package org.isopter.mapper.cda;

import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.mapper.json.Raw;

/**
 * Who the person of a document is, and who wrote or told what stands in it: what the person or a
 * relative tells of an examination is none.
 *
 * @param ids the ids of the person
 * @param born the birthday; may be empty
 * @param isDead whether the person died, at whatever time
 */
record CdaPeople(Set<String> ids, String born, boolean isDead) {

  private static final int DAY = "2026-03-02".length();

  /** A program with which somebody tests himself. */
  private static final Pattern AT_HOME = Pattern.compile("(?i)\\b(home|self|phone|smartphone)\\b");

  /** HL7 v3-RoleCode: oneself, and the relatives. */
  private static final String RELATIONS = "2.16.840.1.113883.5.111";

  CdaPeople {
    ids = Set.copyOf(ids);
  }

  /** Returns the person whom a document is about. */
  static CdaPeople of(CdaNode document) {
    List<CdaNode> roles =
        document.all("recordTarget").stream()
            .flatMap(target -> target.all("patientRole").stream())
            .toList();
    List<CdaNode> persons = roles.stream().flatMap(role -> role.all("patient").stream()).toList();
    String born =
        persons.stream()
            .flatMap(person -> person.first("birthTime").flatMap(CdaValue::time).stream())
            .findFirst()
            .orElse("");
    boolean dead =
        persons.stream()
            .anyMatch(
                person ->
                    person.extended("deceasedInd").filter("true"::equals).isPresent()
                        || person.extended("deceasedTime").isPresent());
    Set<String> ids = roles.stream().flatMap(CdaPeople::idsOf).collect(Collectors.toSet());
    return new CdaPeople(ids, born, dead);
  }

  /** Says whether an observation is older than the person, by days. */
  boolean areYoungerThan(Raw.Obj observation) {
    String found =
        observation
            .string("effectiveDateTime")
            .or(() -> observation.object("effectivePeriod").flatMap(it -> it.string("start")))
            .orElse("");
    return found.length() >= DAY
        && born.length() >= DAY
        && found.substring(0, DAY).compareTo(born.substring(0, DAY)) < 0;
  }

  /** Returns true if the person or a relative wrote, performed or told what stands at a place. */
  boolean testify(CdaNode at) {
    return roles(at, "author", "assignedAuthor").anyMatch(this::isLay)
        || roles(at, "author", "assignedAuthor").anyMatch(CdaPeople::isAtHome)
        || roles(at, "performer", "assignedEntity").anyMatch(this::isLay)
        || roles(at, "informant", "assignedEntity").anyMatch(this::isLay)
        || roles(at, "informant", "relatedEntity").findAny().isPresent();
  }

  private static Stream<CdaNode> roles(CdaNode at, String participant, String role) {
    return at.all(participant).stream().flatMap(one -> one.all(role).stream());
  }

  private static boolean isAtHome(CdaNode author) {
    return author.all("assignedAuthoringDevice").stream()
        .anyMatch(device -> AT_HOME.matcher(device.text()).find());
  }

  private boolean isLay(CdaNode role) {
    List<CdaNode> codes = role.all("code");
    return codes.stream().anyMatch(code -> code.has("codeSystem", RELATIONS))
        || idsOf(role).anyMatch(ids::contains);
  }

  private static Stream<String> idsOf(CdaNode role) {
    return role.all("id").stream()
        .filter(id -> id.attribute("root").isPresent())
        .map(id -> id.attribute("root").orElse("") + "|" + id.attribute("extension").orElse(""));
  }
}
