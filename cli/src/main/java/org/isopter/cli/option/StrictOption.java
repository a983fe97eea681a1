package org.isopter.cli.option;

import picocli.CommandLine.Option;

/** Whether records with errors are used. */
public final class StrictOption {

  @Option(
      names = "--strict",
      description = "Refuse records with errors by the consistency rules; else they are named.")
  private boolean strict;

  /** Says whether they are refused. */
  public boolean strict() {
    return strict;
  }
}
