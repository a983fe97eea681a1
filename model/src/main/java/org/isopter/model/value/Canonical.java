package org.isopter.model.value;

/**
 * The addresses of everything that Isopter publishes, and the systems of the identifiers that it
 * gives. They are names: nothing has to stand behind them.
 *
 * <p>The addresses lie under {@code w3id.org}, where a project without a domain of its own has its
 * name registered before it publishes.
 */
public final class Canonical {

  /** The base of every canonical address, without a trailing slash. */
  public static final String BASE = "https://w3id.org/isopter/fhir";

  /**
   * The base of the systems of identifiers: what is stored by them outlives a change of address.
   */
  private static final String IDENTIFIERS = "https://w3id.org/isopter/identifier/";

  /** The address that all had in earlier versions. */
  private static final String FORMER = "https://isopter.example/fhir/";

  private static final String FORMER_IDENTIFIERS = FORMER + "identifier/";

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
    return IDENTIFIERS + kind;
  }

  /** Returns a text, with an address of an earlier version as the one that it has now. */
  public static String current(String text) {
    if (!text.startsWith(FORMER)) {
      return text;
    }
    return text.startsWith(FORMER_IDENTIFIERS)
        ? IDENTIFIERS + text.substring(FORMER_IDENTIFIERS.length())
        : BASE + "/" + text.substring(FORMER.length());
  }

  /** Says whether a document holds an address of an earlier version. */
  public static boolean isFormer(String document) {
    return document.contains(FORMER);
  }
}
