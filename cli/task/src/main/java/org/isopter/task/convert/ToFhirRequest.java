package org.isopter.task.convert;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.GivenOut;
import org.isopter.task.input.InputForm;
import org.isopter.task.output.Target;

/**
 * What records are turned into.
 *
 * @param target where bundles go
 * @param form the form of the bundles; empty to take the one that the target's name says, or else
 *     JSON for one record and lines of JSON for several
 * @param kind the kind of bundle
 * @param derived whether to add what follows from the findings
 * @param patients whether to refer to patients also by a search, which only a transaction can
 * @param addresses whether to refer to patients also by an address that follows from the identifier
 * @param carried the file of what {@code from-fhir} kept; empty for the one beside each input
 * @param former files and folders of the records as they were sent before; empty for none
 * @param report what the report says of itself
 * @param strict whether records with errors by the consistency rules are refused
 */
public record ToFhirRequest(
    Target target,
    Optional<InputForm> form,
    BundleKind kind,
    boolean derived,
    boolean patients,
    boolean addresses,
    Optional<Path> carried,
    List<String> former,
    GivenOut report,
    boolean strict) {

  public ToFhirRequest {
    former = List.copyOf(former);
  }

  /** Returns a request for collections of what was recorded, with what was kept beside it. */
  public static ToFhirRequest to(Target target) {
    return new ToFhirRequest(
        target,
        Optional.empty(),
        BundleKind.COLLECTION,
        false,
        false,
        false,
        Optional.empty(),
        List.of(),
        GivenOut.NOTHING,
        false);
  }

  /** Returns this request for another kind of bundle. */
  public ToFhirRequest as(BundleKind other) {
    return new ToFhirRequest(
        target, form, other, derived, patients, addresses, carried, former, report, strict);
  }
}
