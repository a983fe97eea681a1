package org.isopter.cli.option;

import org.isopter.mapper.fhir.BundleKind;
import picocli.CommandLine.Option;

/** The kind of bundle that is written. */
public final class KindOption {

  @Option(
      names = "--as",
      paramLabel = "KIND",
      defaultValue = "collection",
      description = {
        "Kind of bundle: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).",
        "A transaction is for a server; sending it twice changes nothing."
      })
  private BundleKind kind = BundleKind.COLLECTION;

  public BundleKind kind() {
    return kind;
  }
}
