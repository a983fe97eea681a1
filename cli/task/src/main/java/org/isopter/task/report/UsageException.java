package org.isopter.task.report;

/** What was asked for cannot be done as it was put; the message says what to ask for instead. */
public final class UsageException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  public UsageException(String message) {
    super(message);
  }
}
