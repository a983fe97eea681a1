package org.isopter.model.check;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Set;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;

/**
 * An examination that breaks a rule and one that keeps it.
 *
 * @param also the other rules that the first breaks
 * @param breaks the one that breaks it
 * @param keeps the one that keeps it
 */
record RuleCase(Set<String> also, Exam breaks, Exam keeps) {

  static final OffsetDateTime NINE = OffsetDateTime.parse("2026-03-02T09:30:00+01:00");

  static Exam exam(OffsetDateTime performed, List<Fact<?>> facts) {
    return new Exam(
        Header.of(Identifier.of("rule-case"), Party.of(Identifier.of("p-17")), performed), facts);
  }
}
