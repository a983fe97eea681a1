package org.isopter.mapper.message;

import java.util.Collection;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/** A segment in the making. */
final class SegmentDraft {

  private static final int RESULT_STATUS = 11;

  /** What a result is known by: code, sub-id, time, method and site. */
  private static final List<Integer> WHICH = List.of(3, 4, 14, 17, 20);

  private final String name;
  private final SortedMap<Integer, String> fields = new TreeMap<>();

  SegmentDraft(String name) {
    this.name = name;
  }

  /** Puts what a field holds, its marks escaped; nothing where it is empty. */
  SegmentDraft put(int field, String text) {
    if (!text.isEmpty()) {
      fields.put(field, text);
    }
    return this;
  }

  /** Returns what a field holds; empty where it holds nothing. */
  String get(int field) {
    return fields.getOrDefault(field, "");
  }

  boolean isNamed(String other) {
    return name.equals(other);
  }

  /** Returns the same segment with its number among those of its name. */
  SegmentDraft numbered(int number) {
    SegmentDraft same = copy(fields.keySet());
    return same.put(1, String.valueOf(number));
  }

  /** Returns the result as taken back (HL7 table 0085): what it is of, when and where, no value. */
  SegmentDraft deleted() {
    return copy(WHICH).put(RESULT_STATUS, "D");
  }

  private SegmentDraft copy(Collection<Integer> which) {
    SegmentDraft copy = new SegmentDraft(name);
    which.forEach(field -> copy.put(field, get(field)));
    return copy;
  }

  /** Returns the segment without its end. */
  String text() {
    StringBuilder text = new StringBuilder(name);
    int last = fields.isEmpty() ? 0 : fields.lastKey();
    for (int field = 1; field <= last; field++) {
      text.append('|').append(fields.getOrDefault(field, ""));
    }
    return text.toString();
  }
}
