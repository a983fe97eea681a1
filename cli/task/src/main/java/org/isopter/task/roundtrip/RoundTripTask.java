package org.isopter.task.roundtrip;

import java.util.List;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Result;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.Inputs;
import org.isopter.task.input.RecordDocuments;
import org.isopter.task.io.Messages;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.RunLog;

/** Takes records to FHIR and back and writes a line for each record and form. */
public final class RoundTripTask {

  private final RunLog log;
  private final RoundTrip trip;
  private int facts;
  private int forms;
  private int identical;

  /**
   * Makes a task.
   *
   * @param kind the kind of bundle on the way
   */
  public RoundTripTask(RunLog log, BundleKind kind) {
    this.log = log;
    this.trip = new RoundTrip(kind);
  }

  /** Runs every record; a difference raises the status to {@link ExitStatus#REFUSED}. */
  public void run(Inputs inputs) {
    new RecordDocuments(log).each(inputs.find(log), this::take);
    sum();
  }

  private void take(InputDocument item, Exam exam) {
    trip.legs(item, exam).forEach(leg -> write(item, leg));
    facts += exam.facts().size();
    log.accept(item.position());
  }

  private void sum() {
    String what =
        Messages.count(log.done(), "record")
            + " of "
            + Messages.count(facts, "fact")
            + ", 4 forms each";
    String changed = forms == identical ? "" : ", " + (forms - identical) + " not";
    String refused = log.refused() == 0 ? "" : "; " + log.refused() + " could not be read";
    log.say(what + ": " + identical + " identical" + changed + refused);
  }

  private void write(InputDocument item, RoundTrip.Leg leg) {
    forms++;
    String word = leg.isIdentical() ? "identical" : leg.back().isOk() ? "changed" : "refused";
    log.data().printf("%-9s  %-11s  %s%n", word, leg.form(), item.position());
    if (leg.isIdentical()) {
      identical++;
      return;
    }
    log.raise(ExitStatus.REFUSED);
    leg.back().faults().forEach(fault -> log.data().println("    " + fault));
    if (leg.back() instanceof Result.Ok<List<Difference>> changed) {
      changed.value().forEach(this::write);
    }
  }

  private void write(Difference difference) {
    log.data().println("    " + difference.path());
    log.data().println("        before  " + difference.before());
    log.data().println("        after   " + difference.after());
  }
}
