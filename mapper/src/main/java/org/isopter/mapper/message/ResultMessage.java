package org.isopter.mapper.message;

import java.util.List;
import org.isopter.model.value.Fault;

/**
 * A message with the results of an examination.
 *
 * @param text the message; each segment ends in a carriage return
 * @param facts how many facts it holds
 * @param left what the record says and the message does not: where, what, and what would have had a
 *     place
 */
public record ResultMessage(String text, int facts, List<Fault> left) {

  public ResultMessage {
    left = List.copyOf(left);
  }
}
