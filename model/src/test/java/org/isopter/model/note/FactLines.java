package org.isopter.model.note;

import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.EncodedValue;

/** Facts in lines that a person can check, made by the catalogue alone and not by shorthand. */
final class FactLines {

  private FactLines() {}

  /** Returns the facts of a note, one a line, and behind them what was not read. */
  static List<String> of(Note note) {
    List<String> lines = new ArrayList<>();
    note.facts().forEach(fact -> lines.add(of(fact)));
    note.unread().forEach(unread -> lines.add("unread " + unread));
    return lines;
  }

  /** Returns a fact as {@code right distance-acuity: 6/9, correction unaided}. */
  static String of(Fact<?> fact) {
    StringJoiner line = new StringJoiner(", ");
    fact.panel().ifPresent(panel -> add(line, fact, panel));
    fact.outcome().ifAbsent().ifPresent(reason -> line.add("absent: " + reason.word()));
    fact.method().ifPresent(method -> line.add("by " + method.word()));
    fact.at().ifPresent(time -> line.add("at " + time));
    fact.device().ifPresent(device -> line.add("with " + device));
    fact.remarks().forEach(remark -> line.add("remark \"" + remark + "\""));
    return fact.site().word() + " " + fact.finding().id() + ": " + line;
  }

  private static void add(StringJoiner line, Fact<?> fact, EncodedValue panel) {
    if (fact.finding().layout().choice().isPresent()) {
      line.add(fact.finding().layout().writeChoice(panel));
      panel.notation().ifPresent(notation -> line.add("notation " + notation.word()));
    } else {
      panel.value().ifPresent(value -> line.add(DatumTexts.of(value)));
    }
    panel
        .parts()
        .forEach(
            (key, part) ->
                line.add(
                    key + " " + part.fold(DatumTexts::of, reason -> "absent: " + reason.word())));
  }
}
