package org.isopter.task.check;

import java.nio.file.Path;
import java.util.Optional;
import org.isopter.model.check.Violation;
import org.isopter.task.input.InputDocument;

/**
 * A violation that is known and right, and why.
 *
 * @param rule the id of the rule
 * @param file the file, by the end of its name; any file where it is left out
 * @param path the path in the record, with all below it; any path where it is left out
 * @param reason why it is right
 */
public record KnownViolation(
    String rule, Optional<String> file, Optional<String> path, String reason) {

  boolean covers(InputDocument item, Violation violation) {
    return violation.rule().id().equals(rule)
        && file.map(name -> Path.of(item.source().name()).endsWith(name)).orElse(true)
        && path.map(from -> isBelow(violation.path(), from)).orElse(true);
  }

  private static boolean isBelow(String path, String from) {
    String rest = path.startsWith(from) ? path.substring(from.length()) : "?";
    return rest.isEmpty() || rest.startsWith(".") || rest.startsWith("[");
  }

  @Override
  public String toString() {
    return rule
        + file.map(name -> " in " + name).orElse("")
        + path.map(at -> " at " + at).orElse("");
  }
}
