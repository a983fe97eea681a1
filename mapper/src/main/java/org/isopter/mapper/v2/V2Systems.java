package org.isopter.mapper.v2;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.value.Canonical;

/**
 * Names of code systems in messages (HL7 table 0396) and their addresses in FHIR. A name that
 * begins with 99 is one that the table leaves to those who exchange messages.
 */
public final class V2Systems {

  /** Yes and no (HL7 table 0136). */
  public static final String YES_NO = "HL70136";

  /** How a value lies in its range, or how it changed (HL7 table 0078), as FHIR names it. */
  static final String FLAGS = "http://terminology.hl7.org/CodeSystem/v2-0078";

  /** The name of FHIR's codes that say why there is no value, and that of our own. */
  private static final List<String> REASONS = List.of("99.absent", "99.absence");

  private static final Map<String, String> ADDRESSES =
      Map.of(
          "LN",
          "http://loinc.org",
          "SCT",
          "http://snomed.info/sct",
          "UCUM",
          "http://unitsofmeasure.org",
          "NULLFL",
          "http://terminology.hl7.org/CodeSystem/v3-NullFlavor",
          REASONS.get(0),
          "http://terminology.hl7.org/CodeSystem/data-absent-reason");

  /** Before the name of one of our own lists of codes. */
  private static final String OWN = "99.";

  private static final String OWN_ADDRESS = Canonical.codeSystem("");

  private V2Systems() {}

  /** Returns the address of a code system; one of the name itself where the name is not known. */
  static String address(String name) {
    String other =
        name.startsWith(OWN)
            ? OWN_ADDRESS + name.substring(OWN.length())
            : "urn:hl7-v2:" + name.replaceAll("\\s", "-");
    return ADDRESSES.getOrDefault(name, other);
  }

  /** Says whether a name is that of codes that say why there is no value. */
  static boolean isReason(String name) {
    return REASONS.contains(name);
  }

  /** Returns the name of a code system; empty where a message has none for it. */
  public static Optional<String> name(String address) {
    if (address.startsWith(OWN_ADDRESS)) {
      return Optional.of(OWN + address.substring(OWN_ADDRESS.length()));
    }
    return ADDRESSES.entrySet().stream()
        .filter(known -> known.getValue().equals(address))
        .map(Map.Entry::getKey)
        .findFirst();
  }
}
