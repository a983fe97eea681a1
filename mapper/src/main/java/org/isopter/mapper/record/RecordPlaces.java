package org.isopter.mapper.record;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.Optional;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.mapper.record.tree.Complaints;
import org.isopter.mapper.record.tree.JsonTree;
import org.isopter.mapper.record.tree.Node;
import org.isopter.mapper.record.tree.TextPlace;
import org.isopter.mapper.record.tree.YamlTree;

/** Where things stand in the text of one record, found by their paths. */
public final class RecordPlaces {

  private static final Pattern STEP = Pattern.compile("([^.\\[\\]]+)|\\[(\\d+)]");

  private final Optional<Node> record;

  private RecordPlaces(Optional<Node> record) {
    this.record = record;
  }

  /** Returns the places of a record that was read before; a text that is none has no places. */
  public static RecordPlaces of(byte[] utf8, RecordFormat format) {
    String text = new String(utf8, UTF_8);
    String plain = text.startsWith("\uFEFF") ? text.substring(1) : text;
    Complaints unheard = new Complaints();
    return new RecordPlaces(
        format == RecordFormat.JSON
            ? JsonTree.read(plain, unheard)
            : YamlTree.read(plain, unheard));
  }

  /**
   * Returns a path as a fault of the reader gives it: {@code line 12, column 5: findings.ptosis}.
   *
   * <p>The place is that of the longest part of the path that the text spells out: a value written
   * bare has no keys of its own.
   *
   * @param path keys with points between them, places in a list from 0 in brackets
   */
  public String locate(String path) {
    return place(path)
        .map(place -> "line " + place.line() + ", column " + place.column() + ": " + path)
        .orElse(path);
  }

  private Optional<TextPlace> place(String path) {
    Optional<Node.Member> here = record.map(whole -> new Node.Member(whole.place(), whole));
    Optional<TextPlace> place = Optional.empty();
    Matcher step = STEP.matcher(path);
    while (here.isPresent() && step.find()) {
      here = next(here.get().value(), step);
      place = here.map(Node.Member::key).or(deepest(place));
    }
    return place;
  }

  private static Supplier<Optional<TextPlace>> deepest(Optional<TextPlace> soFar) {
    return () -> soFar;
  }

  private static Optional<Node.Member> next(Node node, Matcher step) {
    if (step.group(1) != null) {
      return node instanceof Node.Tree tree
          ? Optional.ofNullable(tree.members().get(step.group(1)))
          : Optional.empty();
    }
    int index = Integer.parseInt(step.group(2));
    return node instanceof Node.Series series && index < series.items().size()
        ? Optional.of(item(series.items().get(index)))
        : Optional.empty();
  }

  private static Node.Member item(Node node) {
    return new Node.Member(node.place(), node);
  }
}
