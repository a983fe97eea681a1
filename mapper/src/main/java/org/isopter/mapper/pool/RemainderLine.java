package org.isopter.mapper.pool;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.value.Fault;

/** Writes what was left over as JSON, a line each. */
final class RemainderLine {

  private static final String TIMES = ",\"times\":";

  private RemainderLine() {}

  /** Returns the line: everything where identities stay, and otherwise nothing of the content. */
  static String of(Remainder left, boolean identified) {
    return identified ? whole(left) : plain(left);
  }

  /** Returns what is said without any content, nor where it was: of which type, and why. */
  static String plain(Remainder left) {
    Map<String, Raw> line = what(left);
    line.put("type", Raw.of(left.shownType()));
    line.put("reasons", strings(left.reasons()));
    return RawJson.write(new Raw.Obj(line));
  }

  /** Returns everything, word for word: it holds identities. */
  static String whole(Remainder left) {
    Map<String, Raw> line = start(left);
    line.put("type", Raw.of(left.type()));
    line.put("at", Raw.of(left.at()));
    line.put("reasons", strings(left.reasons()));
    line.put("faults", strings(left.faults().stream().map(Fault::toString).toList()));
    left.resource().ifPresent(resource -> line.put("resource", resource));
    if (!left.leaves().isEmpty()) {
      Map<String, Raw> leaves = new LinkedHashMap<>();
      left.leaves().forEach((PlacedLeaf leaf) -> leaves.put(leaf.at(), leaf.value()));
      line.put("leaves", new Raw.Obj(leaves));
    }
    return RawJson.write(new Raw.Obj(line));
  }

  private static Map<String, Raw> start(Remainder left) {
    Map<String, Raw> line = new LinkedHashMap<>();
    line.put("source", Raw.of(left.source()));
    line.put("line", number(left.line()));
    line.putAll(what(left));
    return line;
  }

  private static Map<String, Raw> what(Remainder left) {
    Map<String, Raw> line = new LinkedHashMap<>();
    line.put("what", Raw.of(left.what().name().toLowerCase(Locale.ROOT)));
    return line;
  }

  /** Returns a line of {@link #plain} with how often it was said. */
  static String times(String plain, long times) {
    return plain.substring(0, plain.length() - 1) + TIMES + times + "}";
  }

  /** A line of {@link #plain}, and how often it was said. */
  record Counted(String plain, long times) {}

  /** Reads what {@link #times} wrote. */
  static Counted counted(String line) {
    int at = line.lastIndexOf(TIMES);
    long times = Long.parseLong(line.substring(at + TIMES.length(), line.length() - 1));
    return new Counted(line.substring(0, at) + "}", times);
  }

  private static Raw number(long number) {
    return new Raw.Leaf(Raw.Kind.NUMBER, Long.toString(number));
  }

  private static Raw strings(List<String> texts) {
    return Raw.of(texts.stream().map(Raw::of).toList());
  }
}
