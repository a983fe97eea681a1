package org.isopter.profiles;

import static java.nio.charset.StandardCharsets.UTF_8;

import org.hl7.fhir.r4.model.MetadataResource;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.isopter.model.value.Canonical;
import org.isopter.profiles.artefact.ArtefactText;
import org.isopter.profiles.artefact.ProfileRelease;
import org.isopter.profiles.artefact.view.View;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** The two files that say what is in a FHIR package. */
final class PackageManifest {

  private static final JsonMapper JSON =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  private final ObjectNode index = JSON.createObjectNode().put("index-version", 2);
  private final ArrayNode files = index.putArray("files");

  /** Adds an artefact to the index. */
  void add(MetadataResource artefact) {
    ObjectNode file = add(ArtefactText.fileName(artefact), artefact.fhirType());
    file.put("id", artefact.getIdElement().getIdPart());
    file.put("url", artefact.getUrl());
    file.put("version", artefact.getVersion());
    if (artefact instanceof StructureDefinition profile) {
      file.put("kind", profile.getKind().toCode());
      file.put("type", profile.getType());
      file.put("derivation", profile.getDerivation().toCode());
    }
  }

  /** Adds a view to the index. */
  void add(View view) {
    ObjectNode file = add(view.fileName(), View.TYPE);
    file.put("id", view.id());
    file.put("url", view.url());
    file.put("version", ProfileRelease.VERSION);
  }

  private ObjectNode add(String name, String type) {
    return files.addObject().put("filename", name).put("resourceType", type);
  }

  /** Returns {@code .index.json}. */
  byte[] index() {
    return bytes(index);
  }

  /** Returns {@code package.json}. */
  static byte[] packageJson() {
    ObjectNode json = JSON.createObjectNode();
    json.put("name", ProfileRelease.PACKAGE);
    json.put("version", ProfileRelease.VERSION);
    json.put("title", "Isopter");
    json.put("description", "The bedside examination of the optic nerve and the eye in FHIR R4.");
    json.put("type", "fhir.ig");
    json.put("license", "Apache-2.0");
    json.put("author", "Isopter");
    json.put("canonical", Canonical.BASE);
    json.put("url", Canonical.BASE);
    json.putArray("fhirVersions").add(ProfileRelease.FHIR);
    json.putObject("dependencies").put("hl7.fhir.r4.core", ProfileRelease.FHIR);
    return bytes(json);
  }

  private static byte[] bytes(ObjectNode json) {
    return (JSON.writeValueAsString(json).replace("\r\n", "\n") + "\n").getBytes(UTF_8);
  }
}
