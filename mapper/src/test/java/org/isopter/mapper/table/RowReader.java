package org.isopter.mapper.table;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Span;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Variant;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** Reads facts back from nothing but the cells of the long table. */
final class RowReader {

  private static final Table<FindingRow> TABLE = FindingsTable.table();

  private RowReader() {}

  /** Returns the cells of a row by the names of their columns; empty cells are left out. */
  static <R> Map<String, Object> cells(Table<R> table, R row) {
    Map<String, Object> byName = new LinkedHashMap<>();
    List<Optional<?>> cells = table.cells(row);
    for (int i = 0; i < cells.size(); i++) {
      String name = table.columns().get(i).name();
      cells.get(i).ifPresent(cell -> byName.put(name, cell));
    }
    return byName;
  }

  /** Returns what the rows say was seen: finding, eye and value, fact by fact. */
  static List<Fact<?>> facts(List<FindingRow> rows) {
    Map<Object, List<Map<String, Object>>> byFact = new LinkedHashMap<>();
    for (FindingRow row : rows) {
      Map<String, Object> cells = cells(TABLE, row);
      if (cells.get("derived").equals(false)) {
        byFact.computeIfAbsent(cells.get("fact"), any -> new ArrayList<>()).add(cells);
      }
    }
    return byFact.values().stream().<Fact<?>>map(RowReader::fact).toList();
  }

  private static Fact<?> fact(List<Map<String, Object>> rows) {
    Finding<?> finding =
        Catalogue.standard().byId((String) rows.get(0).get("finding")).orElseThrow();
    Site site = word(List.of(Site.values()), (String) rows.get(0).get("eye"));
    return rows.get(0).containsKey("part")
        ? Fact.decode(finding, site, panel(finding, rows)).orThrow()
        : Fact.absent(finding, site, absence(rows.get(0)));
  }

  private static EncodedValue panel(Finding<?> finding, List<Map<String, Object>> rows) {
    Optional<Concept> notation =
        rows.stream()
            .filter(row -> row.containsKey("notation"))
            .map(row -> notation(finding, (String) row.get("notation")))
            .findFirst();
    Variant variant = finding.layout().variant(notation).orElseThrow();
    Map<String, Outcome<Datum>> parts = new LinkedHashMap<>();
    Optional<String> value = Optional.empty();
    for (Map<String, Object> row : rows) {
      if (row.get("part").equals(Part.VALUE)) {
        value = Optional.of((String) row.get("value"));
      } else {
        parts.put((String) row.get("part"), part(variant, row));
      }
    }
    EncodedValue others = new EncodedValue(notation, Optional.empty(), parts);
    if (notation.isPresent()) {
      return finding.layout().readChoice(value.orElseThrow(), others).orThrow().with(parts);
    }
    return new EncodedValue(
        notation, value.map(text -> datum(variant.value().orElseThrow(), text)), parts);
  }

  private static Concept notation(Finding<?> finding, String word) {
    return word(finding.layout().choice().orElseThrow().notations().concepts(), word);
  }

  private static Outcome<Datum> part(Variant variant, Map<String, Object> row) {
    if (row.containsKey("absent")) {
      return Outcome.absent(absence(row));
    }
    Part<?, ?> part =
        variant.parts().stream()
            .filter(one -> one.key().equals(row.get("part")))
            .findFirst()
            .orElseThrow();
    return Outcome.found(datum(part.spec(), (String) row.get("value")));
  }

  private static Absence absence(Map<String, Object> row) {
    return word(List.of(Absence.values()), (String) row.get("absent"));
  }

  private static Datum datum(Spec spec, String text) {
    return spec.fold(
        new Spec.Cases<>() {
          @Override
          public Datum measure(Spec.Measure measure) {
            String digits = text.replaceAll(" .*", "");
            String unit = text.substring(digits.length()).strip();
            Unit of =
                measure.spans().stream()
                    .map(Span::unit)
                    .filter(one -> one.text().equals(unit))
                    .findFirst()
                    .orElseThrow();
            return new Datum.Measure(new BigDecimal(digits), of);
          }

          @Override
          public Datum count(Spec.Count count) {
            return new Datum.Count(Integer.parseInt(text));
          }

          @Override
          public Datum coded(Spec.Coded coded) {
            return new Datum.Coded(word(coded.answers().concepts(), text));
          }

          @Override
          public Datum truth(Spec.Truth truth) {
            return new Datum.Truth(text.equals("yes"));
          }

          @Override
          public Datum text(Spec.Text any) {
            return new Datum.Text(text);
          }

          @Override
          public Datum ratio(Spec.Ratio ratio) {
            int bar = text.indexOf('/');
            String below = text.substring(bar + 1).replaceAll(" .*", "");
            return new Datum.Ratio(
                new BigDecimal(text.substring(0, bar)), new BigDecimal(below), ratio.unit());
          }
        });
  }

  private static <C extends Concept> C word(List<C> list, String word) {
    return list.stream().filter(one -> one.word().equals(word)).findFirst().orElseThrow();
  }
}
