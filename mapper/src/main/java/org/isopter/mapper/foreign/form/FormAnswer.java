package org.isopter.mapper.foreign.form;

import java.util.List;
import java.util.Optional;
import org.isopter.mapper.json.Raw;

/**
 * One answer of a response, with the questions and groups that it stands under.
 *
 * @param at where it stands in the response, as a JSON pointer
 * @param group where the group stands that its question is in; empty for the response itself
 * @param path what the form says of the groups around it and of its question, the outermost first;
 *     an empty object for what the form does not have
 * @param answer the answer; empty for a group that is read as one
 * @param around the items of the response on the way to it, which may have extensions
 */
record FormAnswer(
    String at, String group, List<Raw.Obj> path, Optional<Raw.Obj> answer, List<Raw.Obj> around) {

  FormAnswer {
    path = List.copyOf(path);
    around = List.copyOf(around);
  }

  /** Returns what the form says of the question. */
  Raw.Obj question() {
    return path.get(path.size() - 1);
  }

  /** Says whether the answer is a number, or begins with one: what was measured. */
  boolean isNumber() {
    return answer.stream()
        .anyMatch(
            given ->
                given.get("valueDecimal").isPresent()
                    || given.get("valueInteger").isPresent()
                    || given.get("valueQuantity").isPresent()
                    || given.string("valueString").orElse("").matches("(?s)\\s*[+-]?\\d.*"));
  }

  /** Says whether this stands in a group, however deep. */
  boolean isIn(String other) {
    return other.isEmpty() || group.equals(other) || group.startsWith(other + "/");
  }
}
