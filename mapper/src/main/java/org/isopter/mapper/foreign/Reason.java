package org.isopter.mapper.foreign;

import org.isopter.model.value.Fault;

/**
 * Why something was kept as it came.
 *
 * @param why the kind of reason
 * @param fault where, what was seen there, and what would have been taken; the path is a JSON
 *     pointer within the resource
 */
public record Reason(Why why, Fault fault) {

  /** Returns the reason on one line. */
  @Override
  public String toString() {
    return why.word() + ": " + fault;
  }
}
