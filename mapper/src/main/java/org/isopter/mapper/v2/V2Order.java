package org.isopter.mapper.v2;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.json.Raw;

/**
 * What an order (OBR) says of all results below it.
 *
 * @param isPlain whether it says nothing that may touch what a result means
 * @param performed when, or from when on; may be empty
 * @param ended until when; may be empty
 * @param born the birthday of the person; may be empty
 * @param clock what is known of times without an offset
 * @param status how far the results have come (HL7 table 0123); may be empty
 * @param notes the comments to all of it
 */
record V2Order(
    boolean isPlain,
    String performed,
    String ended,
    String born,
    V2Clock clock,
    String status,
    List<Raw> notes) {

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

  V2Order {
    notes = List.copyOf(notes);
  }

  static V2Order none() {
    return new V2Order(true, "", "", "", V2Clock.UNKNOWN, "", List.of());
  }

  static V2Order of(V2Segment segment) {
    boolean plain =
        TOUCHING.stream().allMatch(field -> segment.raw(field).isEmpty())
            && IN_FORCE.contains(segment.raw(STATUS))
            && isNeutral(segment);
    return new V2Order(
        plain,
        segment.raw(PERFORMED),
        segment.raw(ENDED),
        "",
        V2Clock.UNKNOWN,
        segment.raw(STATUS),
        List.of());
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

  /** Returns a comment as a note; none where it is empty. */
  static List<Raw> note(V2Segment comment) {
    String text =
        String.join(" ", comment.repetitions(3).stream().map(comment::plain).toList()).strip();
    return text.isEmpty() ? List.of() : List.of(V2Values.object("text", Raw.of(text)));
  }

  V2Order with(V2Segment comment) {
    List<Raw> all = new ArrayList<>(notes);
    all.addAll(note(comment));
    return new V2Order(isPlain, performed, ended, born, clock, status, all);
  }

  /** Returns this order for a person of that birthday. */
  V2Order of(String birthday) {
    return new V2Order(isPlain, performed, ended, birthday, clock, status, notes);
  }

  /** Returns this order where something is said that is not read. */
  V2Order touched() {
    return new V2Order(false, performed, ended, born, clock, status, notes);
  }

  /** Returns this order with what was said before it: of the person, and of what was asked for. */
  V2Order behind(V2Order before) {
    List<Raw> all = new ArrayList<>(before.notes);
    all.addAll(notes);
    boolean plain = isPlain && before.isPlain;
    return new V2Order(plain, performed, ended, before.born, clock, status, all);
  }

  V2Order in(V2Clock usual) {
    return new V2Order(isPlain, performed, ended, born, usual, status, notes);
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
    return found.length() >= DAY
        && born.length() >= DAY
        && found.substring(0, DAY).compareTo(born.substring(0, DAY)) < 0;
  }
}
