package org.isopter.model.value;

/** The canonical addresses of everything that Isopter publishes; the base is a reserved name. */
public final class Canonical {

  /** The base of every canonical address, without a trailing slash. */
  public static final String BASE = "https://isopter.example/fhir";

  /** The extension that says what of another system's resource was left over. */
  public static final String LEFT_OVER = profile("left-over");

  /** The extension that marks another system's resource that goes along as it came. */
  public static final String KEPT = profile("kept");

  private Canonical() {}

  /** Returns the address of one of our code systems. */
  public static String codeSystem(String id) {
    return BASE + "/CodeSystem/" + id;
  }

  /** Returns the address of one of our value sets. */
  public static String valueSet(String id) {
    return BASE + "/ValueSet/" + id;
  }

  /** Returns the address of a profile or an extension. */
  public static String profile(String id) {
    return BASE + "/StructureDefinition/" + id;
  }

  /** Returns the address of the view of a finding. */
  public static String view(String id) {
    return BASE + "/ViewDefinition/" + id;
  }

  /** Returns the system of identifiers of a kind, for instance {@code fact}. */
  public static String identifier(String kind) {
    return BASE + "/identifier/" + kind;
  }
}
