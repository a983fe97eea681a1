package org.isopter.mapper.foreign.ledger;

import org.isopter.model.value.Fault;

/** Something cannot be taken safely; carries the reason. */
public final class Refusal extends Exception {

  private static final long serialVersionUID = 1L;

  private final transient Reason reason;

  public Refusal(Why why, Fault fault) {
    super(why.word(), null, false, false);
    this.reason = new Reason(why, fault);
  }

  /** Returns a refusal of what was seen at a JSON pointer, with what would have been taken. */
  public static Refusal of(Why why, String at, String seen, String wanted) {
    return new Refusal(why, Fault.of(at, seen, wanted));
  }

  /** Returns why, and where. */
  public Reason reason() {
    return reason;
  }
}
