package org.isopter.task.roundtrip;

import java.io.PrintStream;
import java.util.List;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Result;
import org.isopter.task.input.InputDocument;
import org.isopter.task.io.Messages;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.RunLog;

/** Tells what came of round trips: a line for each record and form. */
public final class RoundTripText {

  private final PrintStream out;
  private final RunLog journal;
  private final RoundTrip trip;
  private int facts;
  private int forms;
  private int identical;

  public RoundTripText(PrintStream out, RunLog journal, RoundTrip trip) {
    this.out = out;
    this.journal = journal;
    this.trip = trip;
  }

  public void tell(InputDocument item) {
    Result<Exam> exam = trip.read(item);
    if (exam instanceof Result.Ok<Exam> ok) {
      trip.legs(item, ok.value()).forEach(leg -> tell(item, leg));
      facts += ok.value().facts().size();
      journal.accept(item.position(), List.of());
    } else {
      journal.refuseFor(item.position(), exam.faults());
    }
  }

  public void sum() {
    String what =
        Messages.count(journal.done(), "record")
            + " of "
            + Messages.count(facts, "fact")
            + ", 4 forms each";
    String changed = forms == identical ? "" : ", " + (forms - identical) + " not";
    String refused = journal.refused() == 0 ? "" : "; " + journal.refused() + " could not be read";
    journal.say(what + ": " + identical + " identical" + changed + refused);
  }

  private void tell(InputDocument item, RoundTrip.Leg leg) {
    forms++;
    String word = leg.isIdentical() ? "identical" : leg.back().isOk() ? "changed" : "refused";
    out.printf("%-9s  %-11s  %s%n", word, leg.form(), item.position());
    if (leg.isIdentical()) {
      identical++;
      return;
    }
    journal.raise(ExitStatus.REFUSED);
    leg.back().faults().forEach(fault -> out.println("    " + fault));
    if (leg.back() instanceof Result.Ok<List<Difference>> changed) {
      changed.value().forEach(this::tell);
    }
  }

  private void tell(Difference difference) {
    out.println("    " + difference.path());
    out.println("        before  " + difference.before());
    out.println("        after   " + difference.after());
  }
}
