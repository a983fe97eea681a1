package org.isopter.mapper.cda;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Who the person of a document is, and who wrote or told what stands in it: what the person or a
 * relative tells of an examination is none.
 *
 * @param ids the ids of the person
 */
record CdaPeople(Set<String> ids) {

  /** HL7 v3-RoleCode: oneself, and the relatives. */
  private static final String RELATIONS = "2.16.840.1.113883.5.111";

  CdaPeople {
    ids = Set.copyOf(ids);
  }

  /** Returns the person whom a document is about. */
  static CdaPeople of(CdaNode document) {
    return new CdaPeople(
        document.all("recordTarget").stream()
            .flatMap(target -> target.all("patientRole").stream())
            .flatMap(CdaPeople::idsOf)
            .collect(Collectors.toSet()));
  }

  /** Returns true if the person or a relative wrote, performed or told what stands at a place. */
  boolean testify(CdaNode at) {
    return roles(at, "author", "assignedAuthor").anyMatch(this::isLay)
        || roles(at, "performer", "assignedEntity").anyMatch(this::isLay)
        || roles(at, "informant", "assignedEntity").anyMatch(this::isLay)
        || roles(at, "informant", "relatedEntity").findAny().isPresent();
  }

  private static Stream<CdaNode> roles(CdaNode at, String participant, String role) {
    return at.all(participant).stream().flatMap(one -> one.all(role).stream());
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
