package org.isopter.mapper.foreign.vocabulary;

import java.util.Optional;
import org.isopter.mapper.json.Raw;
import org.isopter.model.value.Site;

/**
 * What a coded finding says, as shorthand; {@code @} stands for the side.
 *
 * @param display the name that its code system gives it
 * @param site the eye that the code itself names
 * @param says what it says of an eye
 * @param pair what it says where no eye is named, of both
 * @param denied what is said where an eye is named and it is not there
 * @param deniedPair what is said where no eye is named and it is not there
 */
public record CodedStatement(
    String display,
    Optional<Site> site,
    Optional<String> says,
    Optional<String> pair,
    Optional<String> denied,
    Optional<String> deniedPair) {

  /** Reads a row of the table of statements. */
  static CodedStatement of(Raw row) {
    return new CodedStatement(
        row.string("display").orElseThrow(),
        row.string("site").map(Effect::site),
        row.string("says"),
        row.string("pair"),
        row.string("denied"),
        row.string("deniedPair"));
  }

  /** Returns what is said of an eye, or of both where none is named; empty where it is unclear. */
  public Optional<String> note(Optional<Site> eye, boolean there) {
    Optional<String> sided = there ? says : denied;
    Optional<String> unsided = there ? pair : deniedPair;
    if (eye.isEmpty()) {
      return unsided;
    }
    Optional<String> named = sided.map(text -> text.replace("@", letters(eye.get())));
    return eye.get() == Site.BOTH ? unsided.or(() -> named) : named;
  }

  /** Returns the side as shorthand writes it. */
  static String letters(Site eye) {
    return eye == Site.RIGHT ? "R" : eye == Site.LEFT ? "L" : "OU";
  }
}
