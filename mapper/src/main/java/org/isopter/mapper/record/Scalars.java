package org.isopter.mapper.record;

import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.isopter.mapper.record.tree.Complaints;
import org.isopter.mapper.record.tree.Node;
import org.isopter.model.finding.Answers;
import org.isopter.model.text.NearestWord;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Fault;
import org.isopter.model.value.TextCheck;
import org.isopter.model.value.Times;

/** Reads the single values that are not findings: texts, times and words. */
public final class Scalars {

  public static final Answers REASONS = Answers.of(Absence.class);

  /** A time as a record writes it, for the schema as well. */
  public static final String TIME =
      "^\\d{4}-\\d{2}-\\d{2}T\\d{2}:\\d{2}(:\\d{2}(\\.\\d{1,9})?)?(Z|[+-]\\d{2}:\\d{2})$";

  private static final Pattern TIME_FORM = Pattern.compile(TIME);
  private static final String TIME_WANTED =
      "a date and time with its offset from UTC, such as 2026-03-02T09:30:00+01:00";

  private final Complaints complaints;

  Scalars(Complaints complaints) {
    this.complaints = complaints;
  }

  /** Reads free text. */
  Optional<String> text(Node node) {
    Optional<String> text = quoted(node, "some text");
    return text.flatMap(TextCheck::check).isPresent()
        ? complaints.add(node.place(), TextCheck.check(text.orElseThrow()).orElseThrow())
        : text;
  }

  /** Reads a list of free texts. */
  List<String> texts(Node node) {
    List<String> texts = new ArrayList<>();
    if (node instanceof Node.Series series && !series.items().isEmpty()) {
      series.items().forEach(item -> text(item).ifPresent(texts::add));
    } else {
      complaints.add(node, "a list of texts", advice(node));
    }
    return texts;
  }

  /** Reads a time. */
  Optional<OffsetDateTime> time(Node node) {
    Optional<String> text = node.as(Node.Kind.TEXT);
    if (text.isEmpty() || !TIME_FORM.matcher(text.get()).matches()) {
      return complaints.add(node, TIME_WANTED, timeAdvice(text.orElse("")));
    }
    try {
      Optional<OffsetDateTime> time = text.map(Times::parse);
      Optional<Fault> far = time.flatMap(Times::check);
      return far.isPresent() ? complaints.add(node, far.get().wanted(), "") : time;
    } catch (DateTimeException e) {
      return complaints.add(node, TIME_WANTED, "the calendar or the clock has no such time");
    }
  }

  /** Reads one of a list of concepts by its word. */
  Optional<Concept> word(Node node, Answers answers) {
    Optional<Concept> concept = node.as(Node.Kind.TEXT).flatMap(answers::byWord);
    return concept.isPresent()
        ? concept
        : complaints.add(
            node,
            answers.choices(),
            wordAdvice(node, answers.concepts().stream().map(Concept::word).toList()));
  }

  /** Returns the words nearest to what was seen, as advice. */
  static String wordAdvice(Node node, Collection<String> words) {
    return node instanceof Node.Leaf leaf ? wordAdvice(leaf.text(), words) : "";
  }

  /** Returns the words nearest to what was seen, as advice; empty where none is near. */
  static String wordAdvice(String seen, Collection<String> words) {
    List<String> nearest = NearestWord.of(seen, words.stream());
    return nearest.isEmpty() ? "" : "did you mean \"" + String.join("\" or \"", nearest) + "\"?";
  }

  /** Reads a string; a number or a truth that stands for one is refused with the way out. */
  Optional<String> quoted(Node node, String wanted) {
    Optional<String> text = node.as(Node.Kind.TEXT);
    if (text.isPresent() || !(node instanceof Node.Leaf leaf)) {
      return text.isPresent() ? text : complaints.add(node, wanted, "");
    }
    String advice =
        leaf.kind() == Node.Kind.NOTHING
            ? "leave the key out when there is nothing to say"
            : "put it in quotes, so that it stays as written: \"" + leaf.text() + "\"";
    return complaints.add(node, wanted, advice);
  }

  private static String advice(Node node) {
    return node instanceof Node.Leaf leaf && leaf.kind() == Node.Kind.TEXT
        ? "put it in brackets: [" + leaf.shown() + "]"
        : "";
  }

  private static String timeAdvice(String text) {
    if (text.length() == 10 && text.charAt(4) == '-') {
      return "add the time of day and the offset, so that it is one moment everywhere";
    }
    boolean hasOffset =
        text.endsWith("Z") || text.lastIndexOf('+') > 10 || text.lastIndexOf('-') > 10;
    return text.startsWith("T", 10) && !hasOffset
        ? "add the offset from UTC, for instance \"" + text + "+01:00\""
        : "";
  }
}
