package org.isopter.mapper.foreign;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.foreign.run.Intake;
import org.isopter.mapper.foreign.run.NdjsonFiles;
import org.isopter.mapper.foreign.run.NdjsonRun;
import org.isopter.mapper.foreign.run.Policy;
import org.isopter.mapper.foreign.run.Together;
import org.isopter.model.catalogue.Catalogue;

/** A run over a file of lines in a process of its own, which can be killed. */
public final class LinesProcess {

  private LinesProcess() {}

  /**
   * Runs.
   *
   * @param arguments input, output, lines in a block, and {@code resume} to go on
   */
  public static void main(String... arguments) throws IOException {
    Path output = Path.of(arguments[1]);
    ForeignReader reader = new ForeignReader(Catalogue.standard(), Options.usual());
    Intake intake = Intake.of(reader, Release.R4, Together.FOLDER, new Unheard());
    NdjsonRun.of(intake.block(Integer.parseInt(arguments[2])), Policy.FAITHFUL)
        .run(
            Path.of(arguments[0]),
            NdjsonFiles.of(output).report(report(output)),
            "",
            arguments.length > 3);
  }

  /** Returns where the report of an output is written. */
  public static Path report(Path output) {
    return output.resolveSibling(output.getFileName() + "-report");
  }

  /** Returns the command that runs this with so much heap, for instance {@code 256m}. */
  public static List<String> command(String heap, Object... arguments) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-Xmx" + heap);
    command.add("-cp");
    command.add(System.getProperty("java.class.path"));
    command.add(LinesProcess.class.getName());
    for (Object argument : arguments) {
      command.add(argument.toString());
    }
    return command;
  }
}
