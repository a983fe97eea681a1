package org.isopter.model.entry;

import java.util.List;
import org.isopter.model.value.Site;

/**
 * A line or a field that asks for a part of the examination in shorthand.
 *
 * @param key its name in a draft
 * @param title what is examined
 * @param heading what an answer without a heading is about
 * @param perEye whether each eye is asked apart
 * @param normal what normal is, in shorthand; empty where normal is a figure
 * @param example an answer that is understood
 */
public record EntryField(
    String key, String title, String heading, boolean perEye, String normal, String example) {

  static EntryField eyes(String key, String title, String heading, String normal, String example) {
    return new EntryField(key, title, heading, true, normal, example);
  }

  static EntryField both(String key, String title, String heading, String normal, String example) {
    return new EntryField(key, title, heading, false, normal, example);
  }

  /** Returns what a sheet has a field for: each eye, or both together. */
  public List<Site> sites() {
    return perEye ? Site.EACH_EYE : Site.PAIR;
  }

  /** Says whether normal can be recorded without a figure. */
  public boolean hasNormal() {
    return !normal.isEmpty();
  }
}
