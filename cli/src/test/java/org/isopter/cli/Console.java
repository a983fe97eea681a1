package org.isopter.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The commands that a page shows, with the output that it shows below each. */
final class Console {

  /**
   * A command and its output.
   *
   * @param page the page
   * @param number the line of the command in the page
   * @param command the command as typed
   * @param shown the lines shown below it; an ellipsis stands for any lines
   */
  record Shown(Path page, int number, String command, List<String> shown) {
    @Override
    public String toString() {
      return page + ":" + number + " " + command;
    }
  }

  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|'([^']*)'|(\\S+)");

  private Console() {}

  /** Returns the commands of a page in their order. */
  static List<Shown> of(Path page) {
    List<Shown> all = new ArrayList<>();
    List<String> shown = new ArrayList<>();
    boolean inside = false;
    int number = 0;
    for (String line : lines(page)) {
      number++;
      if (line.startsWith("```")) {
        inside = line.equals("```console");
      } else if (inside && line.startsWith("$ ")) {
        shown = new ArrayList<>();
        all.add(new Shown(page, number, line.substring(2), shown));
      } else if (inside) {
        shown.add(line);
      }
    }
    return all;
  }

  /** Returns the words of a command, quotes taken off. */
  static List<String> words(String command) {
    List<String> words = new ArrayList<>();
    Matcher word = WORD.matcher(command);
    while (word.find()) {
      words.add(word.group().replaceAll("^[\"']|[\"']$", ""));
    }
    return words;
  }

  /** Says whether the lines are those shown, an ellipsis standing for any number of lines. */
  static boolean fits(List<String> shown, List<String> lines) {
    if (shown.isEmpty()) {
      return lines.isEmpty();
    }
    if (shown.get(0).strip().equals("…")) {
      List<String> rest = shown.subList(1, shown.size());
      return java.util.stream.IntStream.rangeClosed(0, lines.size())
          .anyMatch(skipped -> fits(rest, lines.subList(skipped, lines.size())));
    }
    return !lines.isEmpty()
        && lines.get(0).equals(shown.get(0))
        && fits(shown.subList(1, shown.size()), lines.subList(1, lines.size()));
  }

  private static List<String> lines(Path page) {
    try {
      return Files.readAllLines(page);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
