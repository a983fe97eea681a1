package org.isopter.mapper.fhir.element;

import org.isopter.model.exam.FactKey;
import org.isopter.model.exam.Identifier;

/**
 * The identifiers and addresses that follow from a record's identifier alone.
 *
 * @param system the system of the record's identifier, or our own where it has none
 * @param record the value of the record's identifier
 */
public record Ids(String system, String record) {

  /** Returns the ids of what stands in the record of that identifier. */
  public static Ids of(Identifier id) {
    return new Ids(id.system().orElse(FrameCodes.RECORD_SYSTEM), id.value());
  }

  /** Returns the identifier value of a fact. */
  public String fact(FactKey key) {
    return record + "/" + key.text();
  }

  /** Returns the identifier value of a derived statement. */
  public String derived(String name) {
    return record + "/derived/" + name;
  }

  /** Returns the same id for the same resource of the same record, always. */
  public String uuid(String kind, String value) {
    return NameId.of(kind + "|" + system + "|" + value);
  }

  /** Returns the address within a bundle of a resource of that id. */
  public static String urn(String uuid) {
    return "urn:uuid:" + uuid;
  }
}
