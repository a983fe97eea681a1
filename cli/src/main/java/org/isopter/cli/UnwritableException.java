package org.isopter.cli;

/** An output cannot be written, so that going on makes no sense; the message says which and why. */
final class UnwritableException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  UnwritableException(String output, Exception reason) {
    super("cannot write " + output + " (" + Words.of(reason) + ")", reason);
  }
}
