package org.isopter.profiles;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.validation.FhirValidator;
import ca.uhn.fhir.validation.ResultSeverityEnum;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.zip.GZIPInputStream;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.hl7.fhir.common.hapi.validation.support.CommonCodeSystemsTerminologyService;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.PrePopulatedValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.hl7.fhir.utilities.npm.NpmPackage;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.exam.Fact;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.isopter.profiles.artefact.view.View;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The package installs where nothing else of this project is known. */
class FhirPackageTest {

  @TempDir private static Path folder;
  private static Path tgz;
  private static NpmPackage installed;

  @BeforeAll
  static void write() throws IOException {
    tgz = folder.resolve("isopter.tgz");
    write(tgz);
    try (InputStream in = Files.newInputStream(tgz)) {
      installed = NpmPackage.fromPackage(in);
    }
  }

  private static void write(Path file) throws IOException {
    try (OutputStream out = Files.newOutputStream(file)) {
      FhirPackage.standard().writeTo(out);
    }
  }

  @Test
  void saysWhatItIs() {
    assertEquals("org.isopter.fhir", installed.name());
    assertEquals("4.0.1", installed.fhirVersion());
    assertTrue(installed.dependencies().contains("hl7.fhir.r4.core#4.0.1"));
  }

  @Test
  void theSameCatalogueGivesTheSameBytes() throws IOException {
    Path again = folder.resolve("again.tgz");
    write(again);
    assertArrayEquals(Files.readAllBytes(tgz), Files.readAllBytes(again));
  }

  /** What unpacks it must not write outside the folder that it unpacks into. */
  @Test
  void holdsOnlyPathsBelowItsOwnFolder() throws IOException {
    try (TarArchiveInputStream tar =
        new TarArchiveInputStream(new GZIPInputStream(Files.newInputStream(tgz)))) {
      int entries = 0;
      for (TarArchiveEntry entry = tar.getNextEntry(); entry != null; entry = tar.getNextEntry()) {
        assertEquals(Path.of(entry.getName()).normalize(), Path.of(entry.getName()));
        assertTrue(entry.isFile() && entry.getName().startsWith("package/"), entry.getName());
        entries++;
      }
      assertTrue(entries > 100, "only " + entries + " entries");
    }
  }

  @Test
  void aPlainValidatorTellsRightFromWrongWithIt() throws IOException {
    FhirValidator validator = plainValidator();
    String right =
        Wire.observation(Fact.of(Pressures.INTRAOCULAR, Site.RIGHT, Quantity.of("14", Unit.MM_HG)))
            .toString();
    assertFalse(hasError(validator, right));
    assertTrue(hasError(validator, right.replace("\"value\":14", "\"value\":99")));
    assertTrue(hasError(validator, right.replace("79892-6", "79893-4")));
    assertTrue(hasError(validator, right.replace("mm[Hg]", "kPa")));
  }

  @Test
  void itsViewsAreListedInAFolderOfTheirOwn() throws IOException {
    JsonNode index =
        JsonMapper.builder().build().readTree(installed.load("view", ".index.json")).path("files");
    List<View> views = View.of(Catalogue.standard());
    assertEquals(views.size(), index.size());
    for (int i = 0; i < views.size(); i++) {
      String name = index.get(i).path("filename").asString();
      assertEquals(views.get(i).url(), index.get(i).path("url").asString());
      assertEquals(
          views.get(i).json(), new String(installed.load("view", name).readAllBytes(), UTF_8));
      assertFalse(installed.hasFile("package", name), "readers take what is there for R4");
    }
  }

  /** FHIR R4, ImplementationGuide.definition.resource: what is in the package, each once. */
  @Test
  void itsGuideListsWhatIsInIt() throws IOException {
    Set<String> listed = new TreeSet<>();
    json("ImplementationGuide-isopter.json")
        .at("/definition/resource")
        .forEach(each -> listed.add(each.at("/reference/reference").asString()));
    Set<String> held = new TreeSet<>();
    installed.list("package").stream()
        .filter(name -> name.contains("-") && !name.startsWith("ImplementationGuide"))
        .forEach(name -> held.add(reference(name)));
    installed.list("example").stream()
        .filter(name -> !name.startsWith("."))
        .forEach(name -> held.add(reference(name)));
    assertEquals(held, listed);
    assertTrue(held.contains("Observation/intraocular-pressure"));
  }

  /** FHIR R4 has no search for the body site of an observation; the core ones are named. */
  @Test
  void saysWhatAServerNeeds() throws IOException {
    JsonNode search = json("SearchParameter-observation-body-site.json");
    assertEquals("Observation.bodySite", search.path("expression").asString());
    JsonNode server = json("CapabilityStatement-examination-server.json");
    JsonNode observation = server.at("/rest/0/resource/0");
    Set<String> definitions = new TreeSet<>();
    observation.path("searchParam").forEach(p -> definitions.add(p.path("definition").asString()));
    assertTrue(definitions.contains(search.path("url").asString()), definitions.toString());
    Set<String> supported = new TreeSet<>();
    observation.path("supportedProfile").forEach(each -> supported.add(each.asString()));
    Catalogue.standard()
        .all()
        .forEach(finding -> assertTrue(supported.contains(Canonical.profile(finding.id()))));
  }

  /** So that the artefacts and the definitions that they rest on are themselves R4. */
  @Test
  void whatAServerNeedsIsValid() throws IOException {
    for (String name :
        List.of(
            "SearchParameter-observation-body-site.json",
            "CapabilityStatement-examination-server.json",
            "ValueSet-published-codes.json",
            "ImplementationGuide-isopter.json")) {
      List<ValidationMessage> errors =
          ProfileValidator.standard()
              .validate(new String(installed.load("package", name).readAllBytes(), UTF_8))
              .stream()
              .filter(ValidationMessage::isError)
              .toList();
      assertEquals(List.of(), errors, name);
    }
  }

  private static String reference(String file) {
    return file.substring(0, file.length() - ".json".length()).replaceFirst("-", "/");
  }

  private static JsonNode json(String name) throws IOException {
    return JsonMapper.builder().build().readTree(installed.load("package", name));
  }

  private static boolean hasError(FhirValidator validator, String json) {
    return validator.validateWithResult(json).getMessages().stream()
        .anyMatch(message -> message.getSeverity().compareTo(ResultSeverityEnum.ERROR) >= 0);
  }

  /** Knows the standard and the package; the profiles bring their snapshots along. */
  private static FhirValidator plainValidator() throws IOException {
    FhirContext r4 = FhirContext.forR4Cached();
    PrePopulatedValidationSupport contents = new PrePopulatedValidationSupport(r4);
    for (String type : new String[] {"StructureDefinition", "ValueSet", "CodeSystem"}) {
      for (String file : installed.listResources(type)) {
        var resource = r4.newJsonParser().parseResource(installed.load("package", file));
        contents.addResource(resource);
        assertTrue(
            !(resource instanceof StructureDefinition profile) || profile.hasSnapshot(), file);
      }
    }
    return r4.newValidator()
        .registerValidatorModule(
            new FhirInstanceValidator(
                new ValidationSupportChain(
                    contents,
                    new DefaultProfileValidationSupport(r4),
                    new InMemoryTerminologyServerValidationSupport(r4),
                    new CommonCodeSystemsTerminologyService(r4))));
  }
}
