package org.isopter.mapper.table;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** The long table: a row for each value of each finding, eye and time. */
public final class FindingsTable {

  /** Its name. */
  public static final String NAME = "findings";

  private FindingsTable() {}

  /** Returns the table. */
  public static Table<FindingRow> table() {
    Columns<FindingRow> columns = new Columns<>();
    columns.addAll(ExamColumns.of(FindingRow::exam, FindingRow::at));
    addWhat(columns);
    addValue(columns);
    addHow(columns);
    return new Table<>(NAME, columns.list());
  }

  private static void addWhat(Columns<FindingRow> columns) {
    columns
        .text("fact", "name of the fact or statement within the examination", FindingRow::fact)
        .text("finding", "what was examined, or the kind of statement", FindingRow::finding)
        .add("part", Kind.TEXT, "part of the finding; none where all is absent", FindingRow::part)
        .text("code", "most specific code of the finding", row -> row.code().code())
        .text("code_system", "system of that code", row -> row.code().system())
        .add("part_code", Kind.TEXT, "code of the part", row -> row.partCode().map(Code::code))
        .add("part_system", Kind.TEXT, "its system", row -> row.partCode().map(Code::system))
        .text("eye", "which eye, or both together", row -> row.eye().word())
        .oneOf(Site.values());
  }

  private static void addValue(Columns<FindingRow> columns) {
    columns
        .add("value", Kind.TEXT, "as recorded; the text of a statement", row -> row.value().text())
        .add("notation", Kind.TEXT, "which of several notations", FindingsTable::notation)
        .add("number", Kind.NUMBER, "in the usual unit; acuity in logMAR", FindingsTable::number)
        .add(
            "number_line",
            Kind.NUMBER,
            "acuity in logMAR, its line alone; of a limit, the limit",
            row -> acuity(row, AcuityNumber::line))
        .add(
            "number_assumed",
            Kind.NUMBER,
            "acuity in logMAR by the assumption of number_rule",
            row -> acuity(row, AcuityNumber::assumed))
        .add(
            "number_rule",
            Kind.TEXT,
            "how an acuity got its number, or why it or a limit has none",
            row -> row.value().acuity().map(number -> number.rule().word()))
        .add(
            "low_vision_rank",
            Kind.INTEGER,
            "below any chart, from 1; more is worse",
            row -> row.value().acuity().flatMap(AcuityNumber::rank).map(Integer::longValue))
        .add("unit", Kind.TEXT, "UCUM code of that unit", row -> unit(row, Unit::ucum))
        .add("unit_name", Kind.TEXT, "that unit for people", row -> unit(row, Unit::label))
        .add("value_code", Kind.TEXT, "code of the answer", row -> answer(row, Code::code))
        .add("value_system", Kind.TEXT, "system of that code", row -> answer(row, Code::system))
        .add("absent", Kind.TEXT, "why there is no value", FindingsTable::absent)
        .oneOf(Absence.values());
  }

  private static void addHow(Columns<FindingRow> columns) {
    columns
        .add(
            "condition", Kind.TEXT, "such as the correction", row -> joined(row.conditions(), "; "))
        .add("method", Kind.TEXT, "by which technique", row -> word(row.method()))
        .add("derived", Kind.TRUTH, "derived, not seen", row -> Optional.of(!row.seen()))
        .add("rules", Kind.TEXT, "ids of the rules that translated it", FindingsTable::rules)
        .add("device", Kind.TEXT, "instrument as written", FindingRow::device)
        .add("remarks", Kind.TEXT, "what else was said", row -> joined(row.remarks(), "; "));
  }

  private static Optional<String> notation(FindingRow row) {
    return word(row.value().notation());
  }

  private static Optional<String> unit(FindingRow row, Function<Unit, String> name) {
    return row.value().number().map(Quantity::unit).map(name);
  }

  private static Optional<String> answer(FindingRow row, Function<Code, String> name) {
    return row.value().coded().map(Concept::code).map(name);
  }

  private static Optional<String> absent(FindingRow row) {
    return row.value().absent().map(Absence::word);
  }

  private static Optional<String> word(Optional<Concept> concept) {
    return concept.map(one -> one.word());
  }

  private static Optional<String> rules(FindingRow row) {
    return joined(row.origin().rules(), " ");
  }

  private static Optional<Double> acuity(
      FindingRow row, Function<AcuityNumber, Optional<BigDecimal>> which) {
    return row.value().acuity().flatMap(which).map(Number::doubleValue);
  }

  private static Optional<Double> number(FindingRow row) {
    return row.value().number().map(Quantity::value).map(Number::doubleValue);
  }

  private static Optional<String> joined(List<String> list, String between) {
    return list.isEmpty() ? Optional.empty() : Optional.of(String.join(between, list));
  }
}
