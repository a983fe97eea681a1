package org.isopter.mapper.foreign.ledger;

import org.isopter.model.value.Fault;

/**
 * Why something was kept as it came.
 *
 * @param why the kind of reason
 * @param fault where, what was seen there, and what would have been taken; the path is a JSON
 *     pointer within the resource
 */
public record Reason(Why why, Fault fault) {

  /** Returns the word of the reason. */
  public String word() {
    return why.word();
  }

  /** Says whether a message may quote what was seen: it is no value of a person. */
  public boolean quotes() {
    return why.quotes();
  }

  /**
   * Says whether it is nothing to remark upon: a resource without an observation is used where
   * others refer to it, and of one that was kept before it was said before.
   */
  public boolean isExpected() {
    return why == Why.OTHER_RESOURCE || fault.seen().equals(Why.KEPT_BEFORE);
  }

  /** Returns the reason on one line without what was measured, for a message. */
  public String message() {
    return why.quotes()
        ? toString()
        : why.word() + ": " + fault.path() + ": wanted " + fault.wanted();
  }

  /** Returns the reason on one line. */
  @Override
  public String toString() {
    return why.word() + ": " + fault;
  }
}
