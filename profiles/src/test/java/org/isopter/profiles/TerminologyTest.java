package org.isopter.profiles;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeSystem;
import org.hl7.fhir.r4.model.CodeSystem.CodeSystemContentMode;
import org.hl7.fhir.r4.model.CodeSystem.ConceptDefinitionComponent;
import org.hl7.fhir.r4.model.ConceptMap;
import org.hl7.fhir.r4.model.ConceptMap.SourceElementComponent;
import org.hl7.fhir.r4.model.MetadataResource;
import org.hl7.fhir.r4.model.ValueSet;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Code;
import org.isopter.profiles.artefact.Artefacts;
import org.junit.jupiter.api.Test;

/** The published codes are known under the displays used here, and our own are explained. */
class TerminologyTest {

  private static final Set<String> VERIFIED = Set.of("verified-strong", "verified-record");

  private static final Pattern TAB = Pattern.compile("\t");

  private final List<MetadataResource> resources = Artefacts.of(Catalogue.standard()).resources();

  /** A row of the table; the witness is the source that the row names. */
  private record Row(String display, String source, String confidence) {}

  @Test
  void everyPublishedCodeIsVerifiedUnderItsDisplay() throws IOException {
    Map<String, Row> known = new HashMap<>();
    read(known, Code.LOINC, "loinc.tsv");
    read(known, Code.SNOMED, "snomed.tsv");
    List<Code> published = published().toList();
    assertTrue(published.size() > 80, "so few codes: " + published.size());
    assertAll(published.stream().map(code -> () -> verify(code, known.get(code.token()))));
  }

  @Test
  void everyRowIsUsed() throws IOException {
    Map<String, Row> known = new HashMap<>();
    read(known, Code.LOINC, "loinc.tsv");
    read(known, Code.SNOMED, "snomed.tsv");
    published().map(Code::token).forEach(known::remove);
    assertEquals(Map.of(), known);
  }

  @Test
  void everyCodeOfOursIsDefinedAndEveryFindingSaysWhatWasSearched() {
    for (CodeSystem system : own().toList()) {
      for (ConceptDefinitionComponent concept : system.getConcept()) {
        String token = system.getUrl() + "|" + concept.getCode();
        assertTrue(concept.getDefinition().length() > concept.getDisplay().length() + 2, token);
        if (system.getId().equals("finding")) {
          String note = concept.getPropertyFirstRep().getValue().primitiveValue();
          assertTrue(note.contains("LOINC"), token);
          assertFalse(note.startsWith("No LOINC or SNOMED CT code is named"), token);
        }
      }
    }
  }

  @Test
  void artefactsThatQuoteACodeSystemCarryItsNotice() {
    for (MetadataResource resource : resources) {
      String all = org.isopter.profiles.artefact.ArtefactText.json(resource);
      boolean holds = resource instanceof ValueSet || resource instanceof CodeSystem;
      String notices = Objects.requireNonNullElse(copyright(resource), "");
      if (holds) {
        assertEquals(all.contains(Code.LOINC), notices.contains("LOINC®"), resource.getUrl());
        assertEquals(all.contains(Code.SNOMED), notices.contains("SNOMED CT®"), resource.getUrl());
      }
    }
  }

  private static String copyright(MetadataResource resource) {
    return resource instanceof ValueSet set
        ? set.getCopyright()
        : resource instanceof CodeSystem system ? system.getCopyright() : "";
  }

  private static void verify(Code code, Row row) {
    assertTrue(row != null, code + " has no row");
    assertEquals(row.display(), code.display(), code.token());
    assertTrue(VERIFIED.contains(row.confidence()), code.token());
    assertFalse(code.display().contains("INFERRED"), code.token());
    assertFalse(code.display().contains("[component only]"), code.token());
  }

  private Stream<Code> published() {
    Stream<Code> used =
        resources.stream()
            .filter(resource -> resource.getIdElement().getIdPart().equals("published-codes"))
            .flatMap(set -> ((ValueSet) set).getCompose().getInclude().stream())
            .flatMap(
                include ->
                    include.getConcept().stream()
                        .map(c -> new Code(include.getSystem(), c.getCode(), c.getDisplay())));
    Stream<Code> mapped =
        resources.stream()
            .filter(ConceptMap.class::isInstance)
            .flatMap(map -> ((ConceptMap) map).getGroupFirstRep().getElement().stream())
            .map(TerminologyTest::source);
    return Stream.concat(used, mapped);
  }

  private static Code source(SourceElementComponent element) {
    return Code.snomed(element.getCode(), element.getDisplay());
  }

  private Stream<CodeSystem> own() {
    return systems().filter(system -> system.getContent() == CodeSystemContentMode.COMPLETE);
  }

  /** Their codes are quoted in value sets; who publishes a code system is its owner. */
  @Test
  void noCodeSystemStandsUnderTheAddressOfAnother() {
    assertEquals(
        List.of(),
        systems().filter(s -> !s.getUrl().startsWith(Canonical.codeSystem(""))).toList());
  }

  private Stream<CodeSystem> systems() {
    return resources.stream().filter(CodeSystem.class::isInstance).map(CodeSystem.class::cast);
  }

  private static void read(Map<String, Row> into, String system, String name) throws IOException {
    List<String> lines = Files.readAllLines(Path.of("src/test/resources/terminology", name), UTF_8);
    for (String line : lines.subList(1, lines.size())) {
      List<String> cells = TAB.splitAsStream(line).toList();
      into.put(system + "|" + cells.get(0), new Row(cells.get(1), cells.get(2), cells.get(3)));
    }
  }
}
