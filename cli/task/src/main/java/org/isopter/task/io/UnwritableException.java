package org.isopter.task.io;

/** An output cannot be written, so that going on makes no sense; the message says which and why. */
public final class UnwritableException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  public UnwritableException(String output, Exception reason) {
    super("cannot write " + output + " (" + Messages.of(reason) + ")", reason);
  }
}
