package org.isopter.model.check;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.note.NoteReader;

/**
 * The cases of the rules, read from one table: under the name of each rule the facts that break it
 * ({@code -}) and those that keep it ({@code +}), each a line of shorthand that is read for itself,
 * or in the words of a record where shorthand has none ({@code =}). Behind {@code //} stands the
 * remark of the fact; {@code at} is the time of the examination.
 */
final class RuleCases {

  private static final Path TABLE = Path.of("src/test/resources/rules/cases.txt");
  private static final Pattern HEAD = Pattern.compile("([a-z0-9-]+)(?:, with (.+))?:");
  private static final Pattern LINE = Pattern.compile("([-+]) (= |at )?(.*?)(?: // (.*))?");

  /** The cases by rule. */
  static final Map<String, RuleCase> ALL = read();

  private RuleCases() {}

  static RuleCase of(ConsistencyRule rule) {
    RuleCase found = ALL.get(rule.id());
    if (found == null) {
      throw new IllegalStateException(TABLE + " has no case of " + rule.id());
    }
    return found;
  }

  private static Map<String, RuleCase> read() {
    Map<String, RuleCase> cases = new TreeMap<>();
    try {
      for (String block : Files.readString(TABLE, UTF_8).strip().split("\n\n+", -1)) {
        if (!block.startsWith("#")) {
          add(List.of(block.split("\n", -1)), cases);
        }
      }
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
    return cases;
  }

  private static void add(List<String> block, Map<String, RuleCase> cases) {
    Matcher head = matched(HEAD, block.get(0));
    Set<String> also = new TreeSet<>();
    if (head.group(2) != null) {
      also.addAll(List.of(head.group(2).split(", ", -1)));
    }
    List<Matcher> lines =
        block.subList(1, block.size()).stream().map(line -> matched(LINE, line)).toList();
    RuleCase read = new RuleCase(also, exam(lines, "-"), exam(lines, "+"));
    if (cases.put(head.group(1), read) != null) {
      throw new IllegalStateException(TABLE + " has two cases of " + head.group(1));
    }
  }

  private static Exam exam(List<Matcher> lines, String sign) {
    OffsetDateTime performed = RuleCase.NINE;
    List<Fact<?>> facts = new ArrayList<>();
    for (Matcher line : lines) {
      if (line.group(1).equals(sign)) {
        if ("at ".equals(line.group(2))) {
          performed = OffsetDateTime.parse(line.group(3));
        } else {
          facts.addAll(facts(line, performed));
        }
      }
    }
    return RuleCase.exam(performed, facts);
  }

  private static List<Fact<?>> facts(Matcher line, OffsetDateTime performed) {
    List<Fact<?>> facts =
        line.group(2) == null
            ? NoteReader.performed(performed).facts(line.group(3)).orThrow()
            : List.of(RecordLine.fact(line.group(3)));
    return line.group(4) == null
        ? facts
        : facts.stream().<Fact<?>>map(fact -> fact.remarks(List.of(line.group(4)))).toList();
  }

  private static Matcher matched(Pattern pattern, String text) {
    Matcher matcher = pattern.matcher(text);
    if (!matcher.matches()) {
      throw new IllegalStateException(TABLE + " has the line " + text);
    }
    return matcher;
  }
}
