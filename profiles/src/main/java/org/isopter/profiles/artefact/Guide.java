package org.isopter.profiles.artefact;

import java.util.List;
import org.hl7.fhir.r4.model.Enumerations.FHIRVersion;
import org.hl7.fhir.r4.model.ImplementationGuide;
import org.hl7.fhir.r4.model.ImplementationGuide.SPDXLicense;
import org.hl7.fhir.r4.model.MetadataResource;
import org.hl7.fhir.r4.model.Reference;
import org.isopter.model.value.Canonical;

/** Makes the list of all artefacts. */
final class Guide {

  private static final String ID = "isopter";

  private Guide() {}

  static ImplementationGuide of(List<? extends MetadataResource> artefacts) {
    ImplementationGuide guide =
        Metadata.fill(
            new ImplementationGuide(),
            ID,
            Canonical.BASE + "/ImplementationGuide/" + ID,
            "Bedside eye examination");
    guide.setName("Isopter");
    guide.setPackageId(ProfileRelease.PACKAGE);
    guide.setLicense(SPDXLicense.fromCode("Apache-2.0"));
    guide.addFhirVersion(FHIRVersion._4_0_1);
    guide.setDescription(
        "Profiles and terminology of the bedside examination of the optic nerve and the eye.");
    for (MetadataResource artefact : artefacts) {
      guide
          .getDefinition()
          .addResource()
          .setReference(
              new Reference(artefact.fhirType() + "/" + artefact.getIdElement().getIdPart()))
          .setName(artefact.present());
    }
    return guide;
  }
}
