package org.isopter.mapper.cda;

import java.util.Set;
import org.isopter.mapper.json.Raw;

/**
 * What a person looked through while an acuity was measured (HL7/cda-eyecare, AidToVision): of
 * glasses alone it is known here what they make of it.
 */
final class CdaAid {

  /** SNOMED CT, aid to vision. */
  static final String CODE = "257192006";

  /** SNOMED CT, eye glasses. */
  static final String GLASSES = "50121007";

  /** SNOMED CT, corrected visual acuity. */
  static final String CORRECTED = "397536007";

  private static final String SNOMED = "urn:oid:2.16.840.1.113883.6.96";
  private static final Set<String> SAID =
      Set.of("templateId", "id", "code", "statusCode", "effectiveTime", "value");

  private CdaAid() {}

  /** Says whether an observation within another says that glasses were worn, and nothing more. */
  static boolean isGlasses(CdaNode aid) {
    return aid.name().equals("observation")
        && aid.isOfSomethingDone()
        && aid.has("classCode", "OBS")
        && aid.all("statusCode").stream().allMatch(status -> status.has("code", "completed"))
        && aid.children().stream().allMatch(child -> SAID.contains(child.name()))
        && isOnly(aid, "code", CODE)
        && isOnly(aid, "value", GLASSES);
  }

  private static boolean isOnly(CdaNode aid, String name, String code) {
    return aid.all(name).size() == 1
        && aid.all(name).get(0).has("code", code)
        && aid.all(name).get(0).children().isEmpty();
  }

  /** Returns the name of an acuity that was measured through glasses. */
  static Raw.Obj corrected(Raw.Obj acuity) {
    return CdaValue.with(
        acuity,
        CdaValue.object("system", Raw.of(SNOMED))
            .with("code", Raw.of(CORRECTED))
            .with("display", Raw.of("Corrected visual acuity")));
  }
}
