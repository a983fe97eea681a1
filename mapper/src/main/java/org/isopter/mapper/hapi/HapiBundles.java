package org.isopter.mapper.hapi;

import java.util.Objects;
import org.hl7.fhir.r4.model.Bundle;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirReader;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Result;

/** Examinations as HAPI bundles, for Java callers that work with resources as objects. */
public final class HapiBundles {

  private HapiBundles() {}

  /** Returns an examination as a bundle of a kind. */
  public static Bundle of(Exam exam, BundleKind kind) {
    String json = FhirWriter.of(kind).write(exam);
    return (Bundle) FhirXml.parse(FhirXml.R4.context().newJsonParser(), json, "R4");
  }

  /** Returns the examination of a bundle, or every fault in it with its FHIR path. */
  public static Result<Exam> read(Bundle bundle, Catalogue catalogue) {
    String json =
        FhirXml.strict(FhirXml.R4.context().newJsonParser())
            .encodeResourceToString(Objects.requireNonNull(bundle, "bundle"));
    return new FhirReader(catalogue).read(json);
  }
}
