package org.isopter.mapper.message;

import java.util.SortedMap;
import java.util.TreeMap;

/** A segment in the making. */
final class SegmentDraft {

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
