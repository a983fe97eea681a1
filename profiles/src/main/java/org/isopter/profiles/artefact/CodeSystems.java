package org.isopter.profiles.artefact;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.hl7.fhir.r4.model.CodeSystem;
import org.hl7.fhir.r4.model.CodeSystem.CodeSystemContentMode;
import org.hl7.fhir.r4.model.CodeSystem.ConceptDefinitionComponent;
import org.hl7.fhir.r4.model.CodeSystem.PropertyType;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Code;

/** Makes our own code systems, in full; those of others are only quoted, in value sets. */
final class CodeSystems {

  private static final String SEARCHED = "searched";

  private final CodeUses uses;

  private CodeSystems(CodeUses uses) {
    this.uses = uses;
  }

  static List<CodeSystem> of(CodeUses uses) {
    CodeSystems of = new CodeSystems(uses);
    List<CodeSystem> systems = new ArrayList<>();
    of.bySystem().forEach((url, codes) -> systems.add(of.own(url, codes)));
    return systems;
  }

  private Map<String, List<Code>> bySystem() {
    Map<String, List<Code>> bySystem = new TreeMap<>();
    uses.codes().stream()
        .filter(Code::isLocal)
        .forEach(
            code -> bySystem.computeIfAbsent(code.system(), any -> new ArrayList<>()).add(code));
    return bySystem;
  }

  private CodeSystem own(String url, List<Code> codes) {
    String id = url.substring(Canonical.codeSystem("").length());
    CodeSystem system = start(id, url, "Isopter codes: " + id);
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

  private static CodeSystem start(String id, String url, String title) {
    CodeSystem system = Metadata.fill(new CodeSystem(), id, url, title);
    system.setCaseSensitive(true);
    system.setContent(CodeSystemContentMode.COMPLETE);
    return system;
  }

  private static ConceptDefinitionComponent concept(CodeSystem system, Code code) {
    return system.addConcept().setCode(code.code()).setDisplay(code.display());
  }
}
