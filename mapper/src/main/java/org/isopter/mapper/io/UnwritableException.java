package org.isopter.mapper.io;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;

/** An output cannot be written, so that going on makes no sense; the message says which and why. */
@API(status = Status.STABLE)
public final class UnwritableException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  /**
   * Makes one.
   *
   * @param output what a message calls the output, for instance its path
   * @param reason what failed
   */
  public UnwritableException(String output, Exception reason) {
    super("cannot write " + output + " (" + FailureText.of(reason) + ")", reason);
  }
}
