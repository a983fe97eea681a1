package org.isopter.mapper.pool;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.model.value.Fault;

/**
 * What did not come into the tables, and why.
 *
 * @param source what the tables call the input
 * @param line the line in it, from 1; 0 where it is one document
 * @param what which of the three it is
 * @param type the type of the resource, where it is one
 * @param at where it stood in its document, as a JSON pointer
 * @param reasons the words of the reasons
 * @param faults what was seen and what was wanted
 * @param resource the resource as it came, where it was kept whole
 * @param leaves the leaves that were left over of a resource that was translated
 */
public record Remainder(
    String source,
    long line,
    What what,
    String type,
    String at,
    List<String> reasons,
    List<Fault> faults,
    Optional<Raw> resource,
    List<PlacedLeaf> leaves) {

  /** The ways not to come into the tables. */
  public enum What {
    /** A document that could not be read. */
    REFUSED,
    /** A resource that was kept whole. */
    KEPT,
    /** Leaves of a resource whose findings are in the tables. */
    PART
  }

  /** Types that are named; any other word in the place of one may be anything. */
  private static final Set<String> TYPES =
      Set.of(
          "BodyStructure",
          "Composition",
          "Condition",
          "Device",
          "DiagnosticReport",
          "Encounter",
          "Observation",
          "Organization",
          "Patient",
          "Practitioner",
          "PractitionerRole",
          "Procedure",
          "Provenance",
          "VisionPrescription");

  public Remainder {
    reasons = List.copyOf(reasons);
    faults = List.copyOf(faults);
    leaves = List.copyOf(leaves);
  }

  /**
   * Returns the type where it is one of FHIR that is expected here, and {@code other} otherwise.
   */
  public String shownType() {
    return TYPES.contains(type) ? type : "other";
  }
}
