package org.isopter.mapper.record.tree;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.DocumentStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.MappingStartEvent;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.events.SequenceStartEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/**
 * Reads YAML text into nodes that know where they stand.
 *
 * <p>The parser's events tell a quoted scalar from a plain one, which the usual tree of YAML does
 * not: {@code 017} must not silently become a number, nor {@code "017"} be refused.
 */
public final class YamlTree {

  private static final LoadSettings SETTINGS =
      LoadSettings.builder().setLabel("record").setCodePointLimit(Limits.LENGTH).build();

  private final Iterator<Event> events;
  private final Complaints complaints;

  private YamlTree(Iterator<Event> events, Complaints complaints) {
    this.events = events;
    this.complaints = complaints;
  }

  /** Returns the tree, or nothing when the text is no YAML at all. */
  public static Optional<Node> read(String text, Complaints complaints) {
    try {
      return new YamlTree(new Parse(SETTINGS).parseString(text).iterator(), complaints).document();
    } catch (YamlEngineException e) {
      return YamlTrouble.tell(e, complaints);
    }
  }

  private Optional<Node> document() {
    events.next();
    if (!(events.next() instanceof DocumentStartEvent)) {
      return complaints.add(TextPlace.root(1, 1), "nothing", "a record");
    }
    Event first = events.next();
    Node whole = node(first, TextPlace.root(line(first), column(first)), 0);
    events.next();
    Event after = events.next();
    if (after instanceof DocumentStartEvent) {
      complaints.add(
          TextPlace.root(line(after), column(after)),
          "a second YAML document",
          "one record and nothing else",
          "put each record into a file of its own");
    }
    return Optional.of(whole);
  }

  private Node node(Event event, TextPlace place, int depth) {
    Limits.depth(place, depth);
    refuseTricks(event, place);
    if (event instanceof MappingStartEvent) {
      return tree(place, depth);
    }
    if (event instanceof SequenceStartEvent) {
      return series(place, depth);
    }
    return event instanceof ScalarEvent scalar
        ? new Node.Leaf(place, PlainScalar.kind(scalar), PlainScalar.text(scalar))
        : new Node.Leaf(place, Node.Kind.NOTHING, "");
  }

  private Node tree(TextPlace place, int depth) {
    Map<String, Node.Member> members = new LinkedHashMap<>();
    for (Event event = events.next(); isWithin(event); event = events.next()) {
      String name = key(event, place, depth);
      TextPlace key = place.key(name, line(event), column(event));
      Event start = events.next();
      Node value = node(start, place.key(name, line(start), column(start)), depth + 1);
      if (members.putIfAbsent(name, new Node.Member(key, value)) != null) {
        Limits.duplicate(key, complaints);
      }
    }
    return new Node.Tree(place, members);
  }

  private String key(Event event, TextPlace place, int depth) {
    Node key = node(event, place.key("?", line(event), column(event)), depth + 1);
    if (key instanceof Node.Leaf leaf) {
      return leaf.text();
    }
    complaints.add(key.place(), key.shown() + " as a key", "a word as a key");
    return "?";
  }

  private Node series(TextPlace place, int depth) {
    List<Node> items = new ArrayList<>();
    for (Event event = events.next(); isWithin(event); event = events.next()) {
      items.add(node(event, place.item(items.size(), line(event), column(event)), depth + 1));
    }
    return new Node.Series(place, items);
  }

  private void refuseTricks(Event event, TextPlace place) {
    if (event instanceof AliasEvent) {
      complaints.settle(place, "an alias (*)", "the value itself", "write it out");
    } else if (event instanceof NodeEvent node && node.getAnchor().isPresent()) {
      complaints.settle(place, "an anchor (&)", "the value alone", "remove the anchor");
    }
    PlainScalar.tag(event)
        .ifPresent(
            tag -> complaints.settle(place, "the tag " + tag, "the value alone", "remove the tag"));
  }

  private static boolean isWithin(Event event) {
    return event instanceof NodeEvent;
  }

  private static int line(Event event) {
    return 1 + event.getStartMark().map(Mark::getLine).orElse(0);
  }

  private static int column(Event event) {
    return 1 + event.getStartMark().map(Mark::getColumn).orElse(0);
  }
}
