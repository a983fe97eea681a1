package org.isopter.task.report;

/** What the exit status of a command says; of several that apply, the smallest wins. */
public final class ExitStatus {

  /** Everything was done. */
  public static final int OK = 0;

  /** The command could not finish: a mistake in the program, or a failed read or write. */
  public static final int INTERNAL = 1;

  /** The command line asks for something that is not there. */
  public static final int USAGE = 2;

  /** At least one input was refused; all others were done. */
  public static final int REFUSED = 3;

  /** Something was left over where a strict policy allows no rest, or where no file takes it. */
  public static final int LEFT_OVER = 4;

  private ExitStatus() {}

  /** Returns the status that says more: any but {@link #OK}, and of two the smaller. */
  public static int worse(int one, int other) {
    return one == OK || other == OK ? Math.max(one, other) : Math.min(one, other);
  }
}
