package org.isopter.model.text;

import java.time.OffsetDateTime;
import java.util.Optional;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Concept;

/**
 * How the pieces of a fact are worded: as a record writes them unless a style says otherwise. An
 * empty string leaves a piece out.
 */
public interface FactStyle {

  /** The words of a record: what people copy into one. */
  FactStyle RECORD = new FactStyle() {};

  /** The words of a record with spaces for its hyphens, for who does not know records. */
  FactStyle SPACED =
      new FactStyle() {
        @Override
        public String absent(Absence reason) {
          return reason.word().replace('-', ' ');
        }

        @Override
        public String part(String key, String words) {
          return key.replace('-', ' ') + " " + words;
        }
      };

  /** Returns words for a whole value that is no list of parts; empty to put it part by part. */
  default Optional<String> whole(Object value) {
    return Optional.empty();
  }

  /** Returns the words for a single value. */
  default String datum(Datum datum) {
    return DatumTexts.of(datum);
  }

  /** Returns the words for why there is no value. */
  default String absent(Absence reason) {
    return "absent: " + reason.word();
  }

  /** Returns the words for a part, given those for its value. */
  default String part(String key, String words) {
    return key + " " + words;
  }

  /** Returns the words for a technique of a finding. */
  default String technique(Finding<?> finding, Concept technique) {
    return "method " + technique.word();
  }

  /** Returns the words for an instrument; it tells no two facts apart and is left out. */
  default String device(String name) {
    return "";
  }

  /** Returns the words for a time that is not that of the examination. */
  default String time(OffsetDateTime time) {
    return "at " + time;
  }
}
