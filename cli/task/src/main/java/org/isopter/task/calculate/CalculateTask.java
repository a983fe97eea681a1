package org.isopter.task.calculate;

import java.util.List;
import org.isopter.model.clinical.statement.Caution;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.value.Result;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.RunLog;

/** Writes the answer of a calculation with what it stands on, its source and the caution. */
public final class CalculateTask {

  private final RunLog log;

  public CalculateTask(RunLog log) {
    this.log = log;
  }

  /**
   * Writes the answer to the data of the log; where a value cannot be read the status is {@link
   * ExitStatus#REFUSED}.
   *
   * @param values what the calculation takes, see {@link Calculation#of}
   */
  public void run(Calculation calculation, List<String> values) {
    Result<List<Statement>> answer = calculation.of(values);
    if (answer instanceof Result.Ok<List<Statement>> statements) {
      statements.value().forEach(this::write);
      log.data().println(Caution.TEXT);
    } else {
      answer.faults().forEach(fault -> log.say(calculation + ": " + fault));
      log.raise(ExitStatus.REFUSED);
    }
  }

  private void write(Statement statement) {
    log.data().println(statement.text());
    log.data().println("    from    " + String.join("; ", statement.because()));
    log.data().println("    source  " + statement.source().text());
  }
}
