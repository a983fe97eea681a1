package org.isopter.mapper.fhir;

import java.util.ArrayList;
import java.util.List;
import org.isopter.model.clinical.statement.Caution;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.derive.Derived;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.value.Canonical;

/** The texts of a derived statement in FHIR: for people, and never compared by a reader. */
final class DerivedText {

  /** The system under which the device of a statement names the version of the rule set. */
  static final String RULE_SET = Canonical.identifier("rule-set");

  private DerivedText() {}

  /** Returns what kind of statement it is, for people. */
  static String title(Derived derived) {
    String kind = derived.statement().id().replace('.', ' ').replace('-', ' ');
    return ExamCodes.DERIVED.display() + ": " + kind;
  }

  /**
   * Returns the notes: what is said where the value is a number, why, how sure, and the caution.
   */
  static List<String> notes(Derived derived) {
    Statement statement = derived.statement();
    List<String> notes = new ArrayList<>();
    if (derived.value().isPresent()) {
      notes.add(statement.text());
    }
    notes.add("Because: " + String.join("; ", statement.because()) + ".");
    notes.add("How sure: " + statement.certainty().words() + ".");
    notes.add(Caution.TEXT);
    return notes;
  }

  /** Returns the formula, table or rule set that the statement follows. */
  static String method(Derived derived) {
    return derived.statement().source().text();
  }
}
