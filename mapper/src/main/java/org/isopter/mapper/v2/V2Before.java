package org.isopter.mapper.v2;

import java.util.List;
import java.util.Set;

/** What a message says before its results: of the person (PID) and of what was asked for (ORC). */
final class V2Before {

  private static final int BORN = 7;
  private static final int DIED = 29;
  private static final int DEAD = 30;
  private static final int SPECIES = 35;
  private static final int CONTROL = 1;
  private static final int STATUS = 5;

  /** HL7 table 0119: there are results, or the order stands; none that takes it back. */
  private static final Set<String> CONTROLS =
      Set.of("", "RE", "NW", "OK", "SC", "SN", "NA", "CN", "XO", "XX", "PA", "CH", "RO");

  /** HL7 table 0038: none that was cancelled or discontinued. */
  private static final Set<String> STATUSES = Set.of("", "A", "CM", "IP", "SC");

  private V2Said person = V2Said.NOTHING;
  private V2Said next = V2Said.NOTHING;
  private boolean ordered;

  /** An animal has other eyes; of somebody who died nobody knows here whether it was before. */
  void person(V2Segment segment) {
    boolean plain =
        segment.raw(SPECIES).isEmpty()
            && segment.raw(DIED).isEmpty()
            && Set.of("", "N").contains(segment.raw(DEAD));
    person = new V2Said(plain, segment.raw(BORN), List.of());
    next = person;
    ordered = false;
  }

  void order(V2Segment segment) {
    boolean stands =
        CONTROLS.contains(segment.raw(CONTROL)) && STATUSES.contains(segment.raw(STATUS));
    next = person.and(stands);
    ordered = true;
  }

  /** A comment below the person is one to all results. */
  void comment(V2Segment segment) {
    next = next.with(segment);
    person = ordered ? person : next;
  }

  /** Returns what was said for the results that follow. */
  V2Said said() {
    return next;
  }
}
