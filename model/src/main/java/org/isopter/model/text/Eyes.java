package org.isopter.model.text;

import java.util.EnumSet;
import java.util.Set;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Site;

/** Of which eyes a line of a letter speaks; it follows from sites, never from how many lines. */
public enum Eyes {
  /** The right eye alone. */
  RIGHT("right eye"),
  /** The left eye alone. */
  LEFT("left eye"),
  /** Both eyes, each tested apart. */
  EACH("each eye"),
  /** Both eyes, tested together. */
  TOGETHER("both eyes together"),
  /** Both eyes, where it is not seeing with both that was tested. */
  BOTH("both eyes"),
  /** The pair, or the person: a comparison of the eyes, which names them itself. */
  PAIR("");

  /** The findings that two open eyes are tested for together. */
  private static final Set<Finding<?>> SEEN_TOGETHER =
      Set.of(Acuities.DISTANCE, Acuities.BOUND, Acuities.NEAR, Colours.PLATES);

  private final String words;

  Eyes(String words) {
    this.words = words;
  }

  /** Returns of whom a fact of a finding at a site speaks. */
  public static Eyes of(Finding<?> finding, Site site) {
    if (site == Site.BOTH && !SEEN_TOGETHER.contains(finding)) {
      return finding.sites().equals(Site.PAIR) ? PAIR : BOTH;
    }
    return of(site);
  }

  /** Returns of whom something at a site speaks that can also be said of one eye. */
  public static Eyes of(Site site) {
    return switch (site) {
      case RIGHT -> RIGHT;
      case LEFT -> LEFT;
      case BOTH -> TOGETHER;
    };
  }

  /** Returns the eyes with right and left, where both are there, as each. */
  public static Set<Eyes> joined(Set<Eyes> eyes) {
    Set<Eyes> joined = EnumSet.copyOf(eyes);
    if (joined.containsAll(Set.of(RIGHT, LEFT))) {
      joined.removeAll(Set.of(RIGHT, LEFT));
      joined.add(EACH);
    }
    return joined;
  }

  /** Returns the eyes that lack something: what neither eye has, either eye lacks. */
  public String lacking() {
    return this == EACH ? "either eye" : words;
  }

  /** Returns the eyes within a sentence; nothing for the pair. */
  public String words() {
    return words;
  }
}
