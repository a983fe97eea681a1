package org.isopter.mapper.table;

import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Unit;

/** What a view must say of one fact, put together from the rows of the long table alone. */
final class ViewCells implements Datum.Cases<ViewCells> {

  private final Map<String, String> cells = new TreeMap<>();
  private String name = "";

  private ViewCells() {}

  /** Returns the cells of a fact by column; empty ones are left out. */
  static Map<String, String> of(List<FindingRow> rows) {
    ViewCells all = new ViewCells();
    FindingRow first = rows.get(0);
    all.who(first);
    all.what(first);
    Fact<?> fact = RowReader.facts(rows).get(0);
    fact.panel().ifPresent(all::panel);
    fact.outcome().ifAbsent().ifPresent(reason -> all.put("absent", reason.code().code()));
    return all.cells;
  }

  /** Returns a cell in the one form in which equal things are equal: of a number, of a time. */
  static String plain(String column, String cell) {
    if (column.equals("time")) {
      return OffsetDateTime.parse(cell).toInstant().toString();
    }
    return cell.matches("-?[0-9]+([.][0-9]+)?")
        ? new BigDecimal(cell).stripTrailingZeros().toPlainString()
        : cell;
  }

  private void who(FindingRow row) {
    Header header = row.exam().header();
    header
        .subject()
        .identifier()
        .ifPresent(
            id -> {
              put("subject", id.value());
              id.system().ifPresent(system -> put("subject_system", system));
            });
    put("identifier", header.id().value() + "/" + row.fact());
    put("identifier_system", header.id().system().orElse(Canonical.identifier("record")));
    put("status", header.status().word());
    put("time", row.at().toString());
  }

  private void what(FindingRow row) {
    put("code", row.code().code());
    put("code_system", row.code().system());
    coding("eye", row.eye());
    row.method().ifPresent(method -> coding("method", method));
    row.device().ifPresent(device -> put("device", device));
  }

  private void panel(EncodedValue panel) {
    panel.notation().ifPresent(notation -> coding("notation", notation));
    String suffix = panel.notation().map(Concept::word).map(word -> "_" + word).orElse("");
    panel.value().ifPresent(datum -> put("value" + suffix, datum));
    panel
        .parts()
        .forEach(
            (key, outcome) -> {
              outcome.ifFound().ifPresent(datum -> put(key, datum));
              outcome.ifAbsent().ifPresent(why -> put(key + "_absent", why.code().code()));
            });
  }

  private void put(String key, Datum datum) {
    name = key;
    datum.fold(this);
  }

  private ViewCells put(String key, String cell) {
    String column = key.replace('-', '_');
    cells.put(column, plain(column, cell));
    return this;
  }

  private ViewCells coding(String key, Concept concept) {
    Code code = concept.code();
    put(key + "_code", code.code());
    put(key + "_display", code.display());
    return put(key + "_system", code.system());
  }

  private ViewCells unit(Unit unit) {
    put(name + "_unit", unit.label());
    return put(name + "_unit_code", unit.ucum());
  }

  @Override
  public ViewCells measure(Datum.Measure measure) {
    put(name, measure.value().toPlainString());
    return unit(measure.unit());
  }

  @Override
  public ViewCells count(Datum.Count count) {
    return put(name, Integer.toString(count.value()));
  }

  @Override
  public ViewCells coded(Datum.Coded coded) {
    return coding(name, coded.concept());
  }

  @Override
  public ViewCells truth(Datum.Truth truth) {
    return put(name, Boolean.toString(truth.value()));
  }

  @Override
  public ViewCells text(Datum.Text text) {
    return put(name, text.value());
  }

  @Override
  public ViewCells ratio(Datum.Ratio ratio) {
    put(name + "_numerator", ratio.numerator().toPlainString());
    put(name + "_denominator", ratio.denominator().toPlainString());
    return unit(ratio.unit());
  }
}
