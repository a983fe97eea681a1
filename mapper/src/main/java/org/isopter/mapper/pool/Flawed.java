package org.isopter.mapper.pool;

import java.util.List;
import org.isopter.model.check.Violation;

/**
 * An examination with errors by the consistency rules.
 *
 * @param source what the tables call the input that it was read from
 * @param line the line in it, from 1; 0 where the input is one document
 * @param errors the errors, at least one
 */
public record Flawed(String source, long line, List<Violation> errors) {
  public Flawed {
    errors = List.copyOf(errors);
  }
}
