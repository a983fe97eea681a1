package org.isopter.mapper.fhir;

import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.fhir.element.Json;
import org.isopter.mapper.fhir.element.PatientReference;
import org.isopter.mapper.fhir.element.TreeSink;
import org.isopter.model.exam.Exam;

/**
 * An examination as FHIR R4 without a library: the bundle that {@link FhirWriter} writes as maps in
 * the order of the text, lists, texts, numbers and truths.
 */
public final class FhirTree {

  private FhirTree() {}

  /** Returns a bundle of a kind; numbers keep their digits. */
  public static Map<String, Object> of(Exam exam, BundleKind kind) {
    TreeSink sink = new TreeSink();
    new BundleWriter(new Json(sink, PatientReference.NONE), exam, kind, Optional.empty(), false)
        .write();
    return sink.object();
  }
}
