package org.isopter.mapper.v2;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * What an order (OBR), and what stands before it, says of all results below it.
 *
 * @param said what is said of them, apart from times and status
 * @param performed when, or from when on; may be empty
 * @param ended until when; may be empty
 * @param status how far the results have come (HL7 table 0123); may be empty
 * @param clock what is known of times without an offset
 */
record V2Order(V2Said said, String performed, String ended, String status, V2Clock clock) {

  private static final int SERVICE = 4;
  private static final int PERFORMED = 7;
  private static final int ENDED = 8;
  private static final int STATUS = 25;

  /** Fields that may say which eye, how, or of what: dangers, comments, modifiers, specimens. */
  private static final List<Integer> TOUCHING = List.of(12, 13, 15, 26, 39, 44, 45, 46);

  private static final int DAY = "20260302".length();

  private static final Set<String> IN_FORCE = Set.of("", "F", "P", "C", "R", "A");

  /** Words of a service that say nothing of the side, the lens or the state of the eye. */
  private static final Set<String> NEUTRAL =
      Set.of(
          "eye",
          "eyes",
          "exam",
          "examination",
          "ophthalmology",
          "ophthalmic",
          "visual",
          "vision",
          "acuity",
          "intraocular",
          "pressure",
          "refraction",
          "tonometry",
          "panel",
          "results",
          "report",
          "measurement",
          "measurements",
          "and",
          "of",
          "the",
          "study",
          "note");

  /** Returns what is said of results without an order. */
  static V2Order none(V2Said before, V2Clock clock) {
    return new V2Order(before, "", "", "", clock);
  }

  /** Returns what an order says, behind what was said of the person and of what was asked for. */
  static V2Order of(V2Segment segment, V2Said before, V2Clock clock) {
    boolean plain =
        TOUCHING.stream().allMatch(field -> segment.raw(field).isEmpty())
            && IN_FORCE.contains(segment.raw(STATUS))
            && isNeutral(segment);
    return new V2Order(
        before.and(plain), segment.raw(PERFORMED), segment.raw(ENDED), segment.raw(STATUS), clock);
  }

  private static boolean isNeutral(V2Segment segment) {
    List<String> services = segment.repetitions(SERVICE);
    return services.size() <= 1
        && services.stream()
            .allMatch(one -> isNeutral(segment, one, 2) && isNeutral(segment, one, 5));
  }

  private static boolean isNeutral(V2Segment segment, String service, int component) {
    String words = segment.component(service, component).toLowerCase(Locale.ROOT).strip();
    boolean coded = !segment.component(service, component - 1).isEmpty();
    return words.isEmpty()
        ? !coded
        : List.of(words.split("[^\\p{L}]+", -1)).stream()
            .allMatch(word -> word.isEmpty() || NEUTRAL.contains(word));
  }

  /** Returns this order where more is said of its results. */
  V2Order saying(V2Said more) {
    return new V2Order(more, performed, ended, status, clock);
  }

  /** Returns when a result was found: as it says itself, or else as the order says. */
  Optional<String> time(String own) {
    return clock.time(own.isEmpty() ? performed : own);
  }

  /** Returns until when the results of the order were found; empty where that is not said. */
  Optional<String> end() {
    return ended.equals(performed) ? Optional.empty() : clock.time(ended);
  }

  /** Says whether a result is older than the person, by days. */
  boolean isBeforeBirth(String own) {
    String found = own.isEmpty() ? performed : own;
    String born = said.born();
    return found.length() >= DAY
        && born.length() >= DAY
        && found.substring(0, DAY).compareTo(born.substring(0, DAY)) < 0;
  }
}
