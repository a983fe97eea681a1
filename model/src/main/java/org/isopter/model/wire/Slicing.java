package org.isopter.model.wire;

import java.util.List;

/**
 * How the occurrences of an element are told apart.
 *
 * @param by what tells them apart
 * @param closed whether each occurrence must be one of the slices
 * @param slices the slices, each under its name
 */
public record Slicing(By by, boolean closed, List<Element> slices) {

  /** What tells occurrences apart. */
  public enum By {
    /** The pattern of the occurrence itself. */
    PATTERN,
    /** The pattern of its member {@code code}. */
    CODE,
    /** Its type. */
    TYPE
  }

  public Slicing {
    slices = List.copyOf(slices);
  }

  /** Returns a slicing that allows nothing but the slices. */
  public static Slicing closed(By by, List<Element> slices) {
    return new Slicing(by, true, slices);
  }

  /** Returns a slicing that allows others beside the slices. */
  public static Slicing open(By by, List<Element> slices) {
    return new Slicing(by, false, slices);
  }
}
