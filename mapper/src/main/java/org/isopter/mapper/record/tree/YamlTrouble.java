package org.isopter.mapper.record.tree;

import java.util.Optional;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/** Says what is no YAML in the words of someone who types records. */
final class YamlTrouble {

  private static final String WANTED = "well-formed YAML";

  private YamlTrouble() {}

  static Optional<Node> tell(YamlEngineException e, Complaints complaints) {
    if (!(e instanceof MarkedYamlEngineException marked)) {
      String message = firstLine(String.valueOf(e.getMessage()));
      return complaints.add(TextPlace.root(1, 1), message, WANTED, "");
    }
    TextPlace place =
        marked
            .getProblemMark()
            .map(mark -> TextPlace.root(mark.getLine() + 1, mark.getColumn() + 1))
            .orElse(TextPlace.root(1, 1));
    return tell(firstLine(marked.getProblem()), place, complaints);
  }

  private static Optional<Node> tell(String problem, TextPlace place, Complaints complaints) {
    if (problem.contains("TAB")) {
      return complaints.add(place, "a tab", "spaces to indent with", "replace every tab");
    }
    if (problem.startsWith("mapping values are not allowed")) {
      return complaints.add(
          place,
          "a colon where no key can stand",
          "one key and its value on a line",
          "check the indentation, and put a text that holds a colon in quotes");
    }
    return complaints.add(place, problem, WANTED, advice(problem));
  }

  private static String advice(String problem) {
    if (problem.contains("end of stream") || problem.contains("stream end")) {
      return "the record was cut off: a closing bracket or quote is missing";
    }
    return problem.contains("cannot start any token") ? "put the text in quotes" : "";
  }

  private static String firstLine(String message) {
    String line = message.lines().findFirst().orElse("");
    int detail = line.indexOf(". (Do not use");
    String brief = detail < 0 ? line : line.substring(0, detail);
    return brief.startsWith("found ") ? brief.substring("found ".length()) : brief;
  }
}
