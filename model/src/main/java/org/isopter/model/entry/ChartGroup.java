package org.isopter.model.entry;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.isopter.model.exam.Fact;

/** Lines of shorthand that begin alike and go on with an eye: {@code disc R pink}. */
final class ChartGroup {

  private static final Pattern OF_AN_EYE = Pattern.compile("(.*?) ([RL]) (.*)");

  private final String lead;
  private final List<String> all = new ArrayList<>();
  private final List<Fact<?>> facts = new ArrayList<>();
  private final List<String> right = new ArrayList<>();
  private final List<String> left = new ArrayList<>();

  ChartGroup(String lead) {
    this.lead = lead;
  }

  /** Returns what stands before the eye; the whole line where it names none. */
  static String lead(String line) {
    Matcher eye = OF_AN_EYE.matcher(line);
    return eye.matches() ? eye.group(1) : line;
  }

  void add(String line, Fact<?> fact) {
    all.add(line);
    facts.add(fact);
    Matcher eye = OF_AN_EYE.matcher(line);
    if (eye.matches()) {
      (eye.group(2).equals("R") ? right : left).add(eye.group(3));
    }
  }

  List<Fact<?>> facts() {
    return facts;
  }

  /** Returns the lines as they came. */
  String lines() {
    return String.join("\n", all);
  }

  /** Returns shorter forms, the shortest first; some of them may read otherwise, or not at all. */
  Stream<String> forms() {
    Stream<String> whole = Stream.of(", ", " ").flatMap(this::whole);
    return Stream.concat(whole, Stream.of(byValue(), String.join("; ", all)));
  }

  private Stream<String> whole(String between) {
    String ofRight = String.join(between, right);
    String ofLeft = String.join(between, left);
    String apart = lead + eye(" R ", ofRight) + eye(" L ", ofLeft);
    return ofRight.equals(ofLeft) && !ofRight.isEmpty()
        ? Stream.of(lead + " each " + ofRight, apart)
        : Stream.of(apart);
  }

  private static String eye(String side, String values) {
    return values.isEmpty() ? "" : side + values;
  }

  /** Returns an item for each value that both eyes have, and one for each of the others. */
  private String byValue() {
    List<String> items = new ArrayList<>();
    right.forEach(value -> items.add(lead + (left.contains(value) ? " each " : " R ") + value));
    left.stream()
        .filter(value -> !right.contains(value))
        .forEach(value -> items.add(lead + " L " + value));
    return String.join("; ", items);
  }
}
