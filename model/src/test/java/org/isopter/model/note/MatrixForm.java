package org.isopter.model.note;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * A column of the matrix of notes: a surface form that any finding of its group may have.
 *
 * @param group what a finding must have, so that the form can say it
 * @param name its name
 * @param template the form, with places for the heading, the eyes and the values
 * @param more how it is written, and the facts of other items in it
 */
record MatrixForm(String group, String name, String template, List<String> more) {

  /** Pairs of words for the eyes. */
  private static final List<List<String>> EYES =
      List.of(
          List.of("R", "L"),
          List.of("OD", "OS"),
          List.of("RE", "LE"),
          List.of("Rt", "Lt"),
          List.of("right", "left"),
          List.of("right eye", "left eye"),
          List.of("R eye", "L eye"),
          List.of("(R)", "(L)"));

  private static final List<String> BOTH =
      List.of(
          "OU",
          "BE",
          "both",
          "both eyes",
          "bilat",
          "b/l",
          "bilaterally",
          "each eye",
          "R and L",
          "R+L",
          "R & L");

  static List<MatrixForm> all(String file) {
    return file.lines()
        .filter(line -> !line.isBlank() && !line.startsWith("#"))
        .map(line -> List.of(line.split("\t")))
        .map(
            parts ->
                new MatrixForm(
                    parts.get(0), parts.get(1), parts.get(2), parts.subList(3, parts.size())))
        .toList();
  }

  /** Says whether the form can say what is known of a finding. */
  boolean suits(MatrixFinding finding) {
    return switch (group) {
      case "two", "one", "both" -> finding.has(group.equals("two") ? "two" : "one");
      case "sign", "signs" -> finding.has("sign");
      case "signof" ->
          finding.has("sign") && finding.has("no") && !of(finding, "sign").startsWith("both");
      case "deny", "denyboth", "denyone" -> finding.has("no");
      case "undone" -> finding.has("undone") && (!name.equals("both") || !isOfPair(finding));
      case "undoneone" -> finding.has("undone") && !isOfPair(finding);
      case "undonetwo" -> finding.has("undone") && finding.has("one");
      case "whole" -> finding.has("whole");
      default -> finding.has("normal");
    };
  }

  /** Says whether only the two eyes together can be left undone. */
  private static boolean isOfPair(MatrixFinding finding) {
    return finding.absent("undone", "right", "x").get(0).startsWith("both")
        && !finding.has("undone-one");
  }

  /** Says whether the form is asked about, or left, whatever the finding. */
  boolean is(String what) {
    return more.stream().anyMatch(said -> said.startsWith(what + "="));
  }

  private static String of(MatrixFinding finding, String key) {
    return finding.facts(key, "right").get(0);
  }

  /** Returns the cells of a finding under one of its headings. */
  Stream<MatrixCell> cells(MatrixFinding finding, String heading, int turn) {
    boolean all = finding.headings().get(0).equals(heading);
    boolean sided = template.contains("{R}") || template.contains("{L}");
    List<String> normals = template.contains("{n}") ? finding.normal() : List.of("");
    List<List<String>> eyes =
        some(sided ? EYES : List.of(EYES.get(0)), all && normals.size() == 1, turn);
    List<String> boths =
        some(template.contains("{both}") ? BOTH : List.of(""), all && normals.size() == 1, turn);
    return normals.stream()
        .flatMap(
            normal ->
                boths.stream()
                    .flatMap(
                        both ->
                            eyes.stream()
                                .flatMap(
                                    pair ->
                                        Stream.of(sided && (EYES.indexOf(pair) + turn) % 2 == 1)
                                            .map(
                                                swapped ->
                                                    cell(
                                                        finding, heading, normal, both, pair,
                                                        swapped)))));
  }

  private static <T> List<T> some(List<T> words, boolean all, int turn) {
    return all ? words : List.of(words.get(turn % words.size()));
  }

  private MatrixCell cell(
      MatrixFinding finding,
      String heading,
      String normal,
      String both,
      List<String> pair,
      boolean swapped) {
    String note =
        template
            .replace("{h}", heading)
            .replace("{1}", finding.words("one").or(() -> finding.words("whole")).orElse(""))
            .replace("{2}", finding.words("two").orElse(""))
            .replace("{n}", normal)
            .replace("{both}", both)
            .replace("{R}", pair.get(swapped ? 1 : 0))
            .replace("{L}", pair.get(swapped ? 0 : 1))
            .replace('|', '\n');
    if (more.contains("caps")) {
      note = note.toUpperCase(Locale.ROOT);
    } else if (more.contains("lower")) {
      note = note.toLowerCase(Locale.ROOT);
    }
    String words =
        Stream.of(normal, both, boths(pair)).filter(w -> !w.isEmpty()).findFirst().orElse("");
    String place =
        group
            + "/"
            + name
            + "@"
            + (normal.isEmpty() ? words : (normal + " " + boths(pair)).strip());
    return new MatrixCell(finding, heading, this, place, note, expected(finding, both, swapped));
  }

  private String boths(List<String> pair) {
    return template.contains("{R}") || template.contains("{L}") ? pair.get(0) : "";
  }

  private Set<String> expected(MatrixFinding finding, String both, boolean swapped) {
    String eye = swapped ? "left" : "right";
    String fellow = swapped ? "right" : "left";
    Set<String> facts = new TreeSet<>();
    switch (group) {
      case "two" -> {
        facts.addAll(finding.facts("one", eye));
        facts.addAll(finding.facts("two", fellow));
      }
      case "one" -> facts.addAll(finding.facts("one", eye));
      case "both" -> each(facts, finding, "one");
      case "sign" -> facts.addAll(finding.facts("sign", eye));
      case "signs" ->
          each(facts, finding, together(finding, "signs-both", both) ? "signs-both" : "sign");
      case "signof" -> {
        facts.addAll(finding.facts("sign", eye));
        facts.addAll(finding.facts("no", fellow));
      }
      case "deny" -> each(facts, finding, "no");
      case "denyboth" ->
          each(
              facts,
              finding,
              together(finding, "no-one", both) || !finding.has("no-one") ? "no" : "no-one");
      case "denyone" -> facts.addAll(finding.facts(finding.has("no-one") ? "no-one" : "no", eye));
      case "whole" -> each(facts, finding, "whole");
      case "undone" -> {
        String key =
            both.isEmpty() || together(finding, "undone-one", both) || !finding.has("undone-one")
                ? "undone"
                : "undone-one";
        facts.addAll(finding.absent(key, "right", reason()));
        facts.addAll(finding.absent(key, "left", reason()));
      }
      case "undoneone" ->
          facts.addAll(
              finding.absent(finding.has("undone-one") ? "undone-one" : "undone", eye, reason()));
      case "undonetwo" -> {
        facts.addAll(finding.facts("one", eye));
        facts.addAll(finding.absent("undone", fellow, reason()));
      }
      case "normalone" -> facts.addAll(finding.facts("normal", eye));
      default -> each(facts, finding, "normal");
    }
    extra(eye, fellow).forEach(facts::add);
    return facts;
  }

  /** Says whether words for both are of the two eyes together, in a finding where that differs. */
  private static boolean together(MatrixFinding finding, String key, String both) {
    return finding.has(key) && !both.startsWith("R") && !both.startsWith("each");
  }

  private static void each(Set<String> facts, MatrixFinding finding, String key) {
    facts.addAll(finding.facts(key, "right"));
    facts.addAll(finding.facts(key, "left"));
  }

  private Stream<String> extra(String eye, String fellow) {
    return more.stream()
        .filter(said -> said.contains("="))
        .flatMap(
            said -> {
              String[] parts = said.split("=", 2);
              return switch (parts[0]) {
                case "{R}" -> Stream.of(eye + " " + parts[1]);
                case "{L}" -> Stream.of(fellow + " " + parts[1]);
                case "both-eyes" -> Stream.of("right " + parts[1], "left " + parts[1]);
                default -> Stream.empty();
              };
            });
  }

  private String reason() {
    return more.stream()
        .filter(said -> said.startsWith("reason="))
        .map(said -> said.substring("reason=".length()))
        .findFirst()
        .orElse("not-done");
  }
}
