package org.isopter.mapper.message;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.exam.Demographics;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.FactKey;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Status;
import org.isopter.model.value.Fault;

/** What a record says and its message does not, without the words of the record. */
final class LeftOut {

  private final List<Fault> all = new ArrayList<>();

  private LeftOut() {}

  /** Returns what is left out where the facts of those numbers are written. */
  static List<Fault> of(Exam exam, List<Integer> written) {
    LeftOut left = new LeftOut();
    left.header(exam.header());
    List<FactKey> keys = exam.keys();
    for (int i = 0; i < keys.size(); i++) {
      Fact<?> fact = exam.facts().get(i);
      String where = "findings." + keys.get(i);
      if (!written.contains(i)) {
        left.add(where, fact.finding().title(), "what a message gives back as it is");
      } else {
        left.add(where + ".device", "an instrument", fact.device());
      }
    }
    return List.copyOf(left.all);
  }

  private void header(Header header) {
    add("subject.name", "the name of the person", header.subject().name());
    boolean known = !header.demographics().equals(Demographics.UNKNOWN);
    add("subject", "age or sex", known ? Optional.of(header.subject()) : Optional.empty());
    add("performer", "the examiner", header.performer());
    add("setting", "where it took place", header.setting());
    add("remark", "a remark on the whole", header.remark());
    add("amends", "the record that it amends", header.amends());
    if (header.status() == Status.AMENDED) {
      add("status", header.status().word(), "corrected, as the message says (C)");
    }
  }

  private void add(String where, String what, Optional<?> said) {
    said.ifPresent(text -> add(where, what, "what a message gives back"));
  }

  private void add(String where, String seen, String wanted) {
    all.add(Fault.of(where, seen, wanted));
  }
}
