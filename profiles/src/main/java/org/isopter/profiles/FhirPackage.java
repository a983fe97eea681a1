package org.isopter.profiles;

import static java.nio.charset.StandardCharsets.UTF_8;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.ValidationSupportContext;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.hl7.fhir.common.hapi.validation.support.SnapshotGeneratingValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.WorkerContextValidationSupportAdapter;
import org.hl7.fhir.r4.model.ImplementationGuide;
import org.hl7.fhir.r4.model.MetadataResource;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.profiles.artefact.ArtefactText;
import org.isopter.profiles.artefact.Artefacts;
import org.isopter.profiles.artefact.view.View;
import org.jspecify.annotations.Nullable;

/**
 * The profiles, terminology and views of a catalogue as a FHIR package: an archive that validators
 * and servers install.
 *
 * <p>Its profiles have snapshots; the files beside the classes have none.
 */
public final class FhirPackage {

  // A folder of its own: readers of packages take all beside the profiles for resources of R4.
  private static final String VIEWS = "package/view/";

  private static final FhirPackage STANDARD = new FhirPackage(Catalogue.standard());

  private final Artefacts artefacts;
  private final List<View> views;
  private byte @Nullable [] archive;

  private FhirPackage(Catalogue catalogue) {
    this.artefacts = Artefacts.of(catalogue);
    this.views = View.of(catalogue);
  }

  /** Returns the package of the standard catalogue, which is made once for all. */
  public static FhirPackage standard() {
    return STANDARD;
  }

  /** Returns the package of a catalogue. */
  public static FhirPackage of(Catalogue catalogue) {
    return new FhirPackage(catalogue);
  }

  /**
   * Writes the package as a gzipped tar archive; the same catalogue gives the same bytes.
   *
   * @param tgz where to; it stays open
   * @throws IOException when it cannot be written
   */
  public void writeTo(OutputStream tgz) throws IOException {
    tgz.write(archive());
  }

  /** Snapshots of all profiles take seconds: they are made when they are first asked for. */
  private synchronized byte[] archive() throws IOException {
    if (archive == null) {
      archive = Archive.of(files());
    }
    return archive;
  }

  private Map<String, byte[]> files() throws IOException {
    Map<String, byte[]> files = new TreeMap<>();
    PackageManifest manifest = new PackageManifest();
    for (Resource each : withSnapshots()) {
      Resource artefact =
          each instanceof ImplementationGuide guide ? Examples.listedIn(guide) : each;
      files.put(
          "package/" + ArtefactText.fileName(artefact),
          ArtefactText.json(artefact).getBytes(UTF_8));
      manifest.add((MetadataResource) artefact);
    }
    files.put("package/package.json", PackageManifest.packageJson());
    files.put("package/.index.json", manifest.index());
    files.putAll(viewFiles());
    Examples.all().forEach((name, bytes) -> files.put("package/example/" + name, bytes));
    return files;
  }

  private Map<String, byte[]> viewFiles() {
    Map<String, byte[]> files = new TreeMap<>();
    PackageManifest manifest = new PackageManifest();
    for (View view : views) {
      files.put(VIEWS + view.fileName(), view.json().getBytes(UTF_8));
      manifest.add(view);
    }
    files.put(VIEWS + ".index.json", manifest.index());
    return files;
  }

  private List<Resource> withSnapshots() {
    FhirContext r4 = FhirContext.forR4Cached();
    ValidationSupportChain chain = Support.chain(artefacts);
    ValidationSupportContext context = new ValidationSupportContext(chain);
    // One adapter for all: each of its own would read every definition of the standard again.
    SnapshotGeneratingValidationSupport generator =
        new SnapshotGeneratingValidationSupport(
            r4, new WorkerContextValidationSupportAdapter(chain));
    return artefacts.resources().stream()
        .<Resource>map(
            artefact ->
                artefact instanceof StructureDefinition profile
                    ? (Resource)
                        generator.generateSnapshot(
                            context, profile.copy(), profile.getUrl(), null, profile.getName())
                    : artefact)
        .toList();
  }
}
