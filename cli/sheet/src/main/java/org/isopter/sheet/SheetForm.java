package org.isopter.sheet;

import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Status;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Result;

/**
 * The words in the fields of a sheet by name: those of the header ({@code id}, {@code subject},
 * {@code performer}, {@code performed}) and those of the examination ({@code disc.right}).
 */
final class SheetForm {

  private static final char BETWEEN = '\u001e';
  private static final char EQUALS = '\u001f';

  private final Map<String, String> words = new LinkedHashMap<>();

  /**
   * Reads a form.
   *
   * @param text each name and its words with U+001F between, and U+001E behind each
   */
  SheetForm(String text) {
    for (String entry : text.split(String.valueOf(BETWEEN), -1)) {
      int at = entry.indexOf(EQUALS);
      if (at > 0) {
        words.put(entry.substring(0, at), entry.substring(at + 1).strip());
      }
    }
  }

  /** Returns the words of a field; empty where nothing was written. */
  String words(String name) {
    return words.getOrDefault(name, "");
  }

  private Optional<String> stated(String name) {
    return Optional.of(words(name)).filter(some -> !some.isEmpty());
  }

  /** Returns the header, or what is wrong with it. */
  Result<Header> header() {
    try {
      return Result.ok(
          new Header(
              Identifier.of(words("id")),
              Party.of(Identifier.of(words("subject"))),
              stated("performer").map(Party::named),
              OffsetDateTime.parse(words("performed")),
              Status.FINAL,
              Optional.empty(),
              Optional.empty(),
              Optional.empty()));
    } catch (FaultException wrong) {
      return Result.refused(wrong.faults());
    } catch (DateTimeException noTime) {
      return Result.refused(
          List.of(
              Fault.of(
                  "performed",
                  "\"" + words("performed") + "\"",
                  "a time with its offset, such as 2026-03-02T09:30:00+01:00")));
    }
  }
}
