package org.isopter.model.note;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A row of the matrix of notes: a finding, its headings, and what its words say of an eye.
 *
 * @param name its name
 * @param fields what the file says of it, by key; a key may stand several times
 */
record MatrixFinding(String name, Map<String, List<String>> fields) {

  /** Reads the rows of a file: blocks with an empty line between. */
  static List<MatrixFinding> all(String file) {
    return Stream.of(file.strip().split("\n\n+"))
        .map(block -> block.lines().filter(line -> !line.startsWith("#")).toList())
        .filter(lines -> !lines.isEmpty())
        .map(MatrixFinding::of)
        .toList();
  }

  private static MatrixFinding of(List<String> lines) {
    Map<String, List<String>> fields = new LinkedHashMap<>();
    for (String line : lines.subList(1, lines.size())) {
      String[] parts = line.split(": ", 2);
      fields.computeIfAbsent(parts[0], any -> new ArrayList<>()).add(parts[1]);
    }
    return new MatrixFinding(lines.get(0), fields);
  }

  List<String> headings() {
    return List.of(one("say").orElseThrow().split(" \\| "));
  }

  /** Returns the words for normal; empty where there are none. */
  List<String> normal() {
    return words("normal").map(words -> List.of(words.split(" \\| "))).orElse(List.of());
  }

  /** Returns the words before the equals sign. */
  Optional<String> words(String key) {
    return one(key).map(said -> said.split(" = ", 2)[0]);
  }

  /** Returns the facts of an eye, each in a line, as {@link FactLines} writes them. */
  List<String> facts(String key, String eye) {
    String said = one(key).orElseThrow(() -> new IllegalStateException(name + " lacks " + key));
    String facts = said.contains(" = ") ? said.split(" = ", 2)[1] : said;
    return facts.equals("none")
        ? List.of()
        : Stream.of(facts.split(" & ")).map(f -> of(f, eye)).toList();
  }

  /** Returns the facts of findings that have no value for a reason. */
  List<String> absent(String key, String eye, String reason) {
    return Stream.of(one(key).orElseThrow().split(" & "))
        .map(finding -> finding.contains("{reason}") ? finding : finding + ": absent: {reason}")
        .map(finding -> of(finding.replace("{reason}", reason), eye))
        .toList();
  }

  private static String of(String fact, String eye) {
    String fellow = eye.equals("right") ? "left" : "right";
    boolean placed = fact.startsWith("both ") || fact.startsWith("{");
    return (placed ? fact : eye + " " + fact).replace("{eye}", eye).replace("{fellow}", fellow);
  }

  boolean has(String key) {
    return fields.containsKey(key);
  }

  /** Says whether a form is named under a key, as {@code ask} or {@code odd}. */
  boolean names(String key, String form) {
    return patterns(key).stream().anyMatch(pattern -> matches(pattern, form));
  }

  /** Returns the forms that are named under a key. */
  List<String> patterns(String key) {
    return fields.getOrDefault(key, List.of()).stream()
        .flatMap(line -> Stream.of(line.split(" = ", 2)[0].split(", ")))
        .toList();
  }

  /** Says whether a form, with or without the words for its eyes, fits a pattern. */
  static boolean matches(String pattern, String form) {
    String regex =
        Stream.of(pattern.split("\\*", -1)).map(Pattern::quote).collect(Collectors.joining(".*"));
    return form.matches(regex) || form.substring(0, form.indexOf('@')).matches(regex);
  }

  private Optional<String> one(String key) {
    return Optional.ofNullable(fields.get(key)).map(lines -> lines.get(0));
  }
}
