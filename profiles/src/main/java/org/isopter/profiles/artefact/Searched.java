package org.isopter.profiles.artefact;

import java.util.Map;
import java.util.stream.Collectors;
import org.isopter.model.value.Code;

/** What published code was looked for before a finding got a code of ours. */
final class Searched {

  private static final String NOTHING_NOTED =
      "No LOINC or SNOMED CT code is named in the catalogue for this finding.";

  private final Map<String, String> notes;

  private Searched(Map<String, String> notes) {
    this.notes = notes;
  }

  static Searched read() {
    return new Searched(
        Rows.read("searched.tsv").stream()
            .collect(Collectors.toMap(row -> row.get(0), row -> row.get(1))));
  }

  /** Returns the note on a code of ours; empty for codes of other lists than the findings. */
  String note(Code code) {
    boolean finding = code.sameAs(Code.local("finding", code.code(), ""));
    return finding ? notes.getOrDefault(code.code(), NOTHING_NOTED) : "";
  }
}
