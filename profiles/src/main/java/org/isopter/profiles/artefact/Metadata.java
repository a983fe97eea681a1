package org.isopter.profiles.artefact;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Enumerations.PublicationStatus;
import org.hl7.fhir.r4.model.MetadataResource;
import org.isopter.model.value.Code;

/** What every artefact says of itself, and the notices of the code systems it quotes. */
public final class Metadata {

  private static final Map<String, String> NOTICES = notices();

  private Metadata() {}

  /** Fills in what all artefacts share, the title too, and returns the artefact. */
  static <T extends MetadataResource> T fill(T artefact, String id, String url, String title) {
    fill(artefact, id, url);
    artefact.setTitle(title);
    return artefact;
  }

  /** Fills in what artefacts without a title share and returns the artefact. */
  static <T extends MetadataResource> T fill(T artefact, String id, String url) {
    artefact.setId(id);
    artefact.setUrl(url);
    artefact.setVersion(ProfileRelease.VERSION);
    artefact.setName(name(id));
    artefact.setStatus(PublicationStatus.ACTIVE);
    artefact.setExperimental(false);
    artefact.setDateElement(new DateTimeType(ProfileRelease.DATE));
    artefact.setPublisher("Isopter");
    return artefact;
  }

  /** Returns the notices that go with these codes; empty where none is asked for. */
  public static String notices(Collection<Code> codes) {
    return new TreeSet<>(codes.stream().map(Code::system).toList())
        .stream()
            .filter(NOTICES::containsKey)
            .map(NOTICES::get)
            .collect(Collectors.joining("\n\n"));
  }

  private static String name(String id) {
    return Pattern.compile("-")
        .splitAsStream("isopter-" + id)
        .filter(word -> !word.isEmpty())
        .map(word -> word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1))
        .collect(Collectors.joining());
  }

  private static Map<String, String> notices() {
    Map<String, String> notices = new LinkedHashMap<>();
    notices.put(
        Code.LOINC,
        "This material contains content from LOINC (http://loinc.org). LOINC is copyright ©"
            + " Regenstrief Institute, Inc. and the Logical Observation Identifiers Names and Codes"
            + " (LOINC) Committee and is available at no cost under the license at"
            + " http://loinc.org/license. LOINC® is a registered United States trademark of"
            + " Regenstrief Institute, Inc.");
    notices.put(
        Code.SNOMED,
        "SNOMED CT® identifiers and fully specified names, © SNOMED International, after its"
            + " Global Patient Set; any other use of SNOMED CT content needs a SNOMED CT licence."
            + " SNOMED International does not endorse this product.");
    return notices;
  }
}
