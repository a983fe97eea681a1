package org.isopter.profiles.artefact;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.hl7.fhir.r4.model.CodeSystem;
import org.hl7.fhir.r4.model.CodeSystem.CodeSystemContentMode;
import org.hl7.fhir.r4.model.CodeSystem.ConceptDefinitionComponent;
import org.hl7.fhir.r4.model.CodeSystem.PropertyType;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Code;

/** Makes the code systems: our own in full, and of the published ones the codes that are used. */
final class CodeSystems {

  private static final String SEARCHED = "searched";

  private final CodeUses uses;

  private CodeSystems(CodeUses uses) {
    this.uses = uses;
  }

  static List<CodeSystem> of(CodeUses uses) {
    CodeSystems of = new CodeSystems(uses);
    List<CodeSystem> systems = new ArrayList<>();
    of.bySystem(true).forEach((url, codes) -> systems.add(of.own(url, codes)));
    of.bySystem(false).forEach((url, codes) -> of.fragment(url, codes).ifPresent(systems::add));
    return systems;
  }

  private Map<String, List<Code>> bySystem(boolean local) {
    Map<String, List<Code>> bySystem = new TreeMap<>();
    uses.codes().stream()
        .filter(code -> code.isLocal() == local)
        .forEach(
            code -> bySystem.computeIfAbsent(code.system(), any -> new ArrayList<>()).add(code));
    return bySystem;
  }

  private CodeSystem own(String url, List<Code> codes) {
    String id = url.substring(Canonical.codeSystem("").length());
    CodeSystem system = start(id, url, "Isopter codes: " + id, CodeSystemContentMode.COMPLETE);
    system.setDescription(
        "Codes for which no published code was found. What could be read of LOINC and SNOMED CT was"
            + " searched; no full release was at hand.");
    boolean noted = codes.stream().anyMatch(code -> !uses.searched(code).isEmpty());
    if (noted) {
      system
          .addProperty()
          .setCode(SEARCHED)
          .setType(PropertyType.STRING)
          .setDescription("What published code was looked for, and what came nearest.");
    }
    for (Code code : codes) {
      ConceptDefinitionComponent concept =
          concept(system, code).setDefinition(uses.definition(code));
      String searched = uses.searched(code);
      if (!searched.isEmpty()) {
        concept
            .addProperty()
            .setCode(SEARCHED)
            .setValue(new org.hl7.fhir.r4.model.StringType(searched));
      }
    }
    system.setCount(codes.size());
    return system;
  }

  private java.util.Optional<CodeSystem> fragment(String url, List<Code> codes) {
    Map<String, String> names = new LinkedHashMap<>();
    names.put(Code.LOINC, "loinc");
    names.put(Code.SNOMED, "snomed");
    return java.util.Optional.ofNullable(names.get(url)).map(name -> fragment(url, name, codes));
  }

  private CodeSystem fragment(String url, String name, List<Code> codes) {
    CodeSystem system =
        start(
            name + "-fragment",
            url,
            "The codes of " + name + " that are used here",
            CodeSystemContentMode.FRAGMENT);
    system.setVersion(null);
    system.setDescription(
        "Only the codes that the profiles and the records use; the code system itself has many more.");
    system.setCopyright(Metadata.notices(codes));
    codes.forEach(code -> concept(system, code));
    return system;
  }

  private static CodeSystem start(
      String id, String url, String title, CodeSystemContentMode content) {
    CodeSystem system = Metadata.fill(new CodeSystem(), id, url, title);
    system.setCaseSensitive(true);
    system.setContent(content);
    return system;
  }

  private static ConceptDefinitionComponent concept(CodeSystem system, Code code) {
    return system.addConcept().setCode(code.code()).setDisplay(code.display());
  }
}
