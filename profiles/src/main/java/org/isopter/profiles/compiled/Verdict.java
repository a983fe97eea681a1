package org.isopter.profiles.compiled;

import java.util.List;

/** What is said of a resource that was judged by itself. */
public sealed interface Verdict {

  /** The reference validator would say nothing of it. */
  record Valid() implements Verdict {}

  /**
   * The reference validator would refuse it.
   *
   * @param breaches what is wrong, at least one
   */
  record Invalid(List<Breach> breaches) implements Verdict {
    public Invalid {
      breaches = List.copyOf(breaches);
    }
  }

  /**
   * It holds something that is not known here; the reference validator must say.
   *
   * @param reason what that is, and where
   */
  record Undecided(String reason) implements Verdict {}

  /**
   * One thing that is wrong.
   *
   * @param path where, as FHIRPath from the root
   * @param text what was seen, and what was wanted
   */
  record Breach(String path, String text) {}
}
