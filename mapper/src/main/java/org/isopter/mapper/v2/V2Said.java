package org.isopter.mapper.v2;

import java.util.List;
import java.util.stream.Stream;
import org.isopter.mapper.json.Raw;

/**
 * What is said of all results that follow, apart from when and how far they have come.
 *
 * @param isPlain whether nothing is said that may touch what a result means
 * @param born the birthday of the person; may be empty
 * @param notes the comments
 */
record V2Said(boolean isPlain, String born, List<Raw> notes) {

  static final V2Said NOTHING = new V2Said(true, "", List.of());

  V2Said {
    notes = List.copyOf(notes);
  }

  /** Returns this with a comment. */
  V2Said with(V2Segment comment) {
    List<Raw> all = Stream.concat(notes.stream(), note(comment).stream()).toList();
    return new V2Said(isPlain, born, all);
  }

  /** Returns this with something beside it that is plain, or is not read. */
  V2Said and(boolean plain) {
    return new V2Said(isPlain && plain, born, notes);
  }

  /** Returns a comment as a note; none where it is empty. */
  static List<Raw> note(V2Segment comment) {
    String text =
        String.join(" ", comment.repetitions(3).stream().map(comment::plain).toList()).strip();
    return text.isEmpty() ? List.of() : List.of(V2Values.object("text", Raw.of(text)));
  }
}
