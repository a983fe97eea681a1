package org.isopter.cli.option;

import picocli.CommandLine.Option;

/** The option that shows a command's help. */
public final class HelpOption {

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  boolean help;
}
