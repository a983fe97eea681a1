package org.isopter.cli.command;

import java.util.List;
import org.isopter.cli.option.CalculationWord;
import org.isopter.task.calculate.CalculateTask;
import org.isopter.task.calculate.Calculation;
import org.isopter.task.io.Streams;
import org.isopter.task.report.RunLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Answers a single question of clinical practice. */
@Command(
    name = "calculate",
    description = {
      "Answers one question of lenses, prisms, driving, low vision, field or retinopathy.",
      "Lenses are transposed and moved to the cornea, acuities and fields held against figures;",
      "each answer has its source. Local rules and a licensed clinician decide."
    },
    footer = {
      "",
      "Examples:",
      "  isopter calculate vertex '-8.00 -2.00 x180' 12",
      "  isopter calculate driving 6/7.5 6/60",
      "  isopter calculate field-reliability false-positives 3 15",
      "  isopter calculate driving-field 70 70 30 40 no-defect",
      "  isopter calculate retinopathy microaneurysms haemorrhages=4",
      "  isopter calculate low-vision 'CF 30 cm'"
    })
public final class CalculateCommand extends TaskCommand {

  @Parameters(
      index = "0",
      paramLabel = "WHAT",
      converter = CalculationWord.class,
      completionCandidates = CalculationWord.class,
      description = "${COMPLETION-CANDIDATES}.")
  private Calculation what = Calculation.TRANSPOSE;

  @Parameters(index = "1..*", paramLabel = "VALUE", description = "As in the examples.")
  private List<String> values = List.of();

  public CalculateCommand(Streams streams) {
    super(streams);
  }

  /** A power such as -2.00 is a value, and no option. */
  @Spec
  void accept(CommandSpec spec) {
    spec.parser().unmatchedOptionsArePositionalParams(true);
  }

  @Override
  void run(RunLog log) {
    new CalculateTask(log).run(what, values);
  }
}
