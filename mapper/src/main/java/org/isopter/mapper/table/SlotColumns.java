package org.isopter.mapper.table;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.isopter.mapper.table.EyeRow.Cell;
import org.isopter.model.catalogue.Refractions;
import org.isopter.model.clinical.lens.PowerVector;
import org.isopter.model.clinical.statement.Numbers;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Variant;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/** Makes the columns of one slot of the wide table from the layout of its finding. */
final class SlotColumns {

  private final ColumnGroup slot;
  private final String name;
  private final Layout<?> layout;

  SlotColumns(ColumnGroup slot) {
    this.slot = slot;
    this.name = slot.name();
    this.layout = slot.finding().layout();
  }

  List<Column<EyeRow>> columns() {
    List<Column<EyeRow>> columns = new ArrayList<>();
    if (layout.choice().isPresent()) {
      columns.add(column("", Kind.TEXT, " as recorded", this::written));
      columns.add(column("_logmar", Kind.NUMBER, " in logMAR", this::logMar).in(Unit.LOGMAR));
    } else {
      layout.variants().get(0).value().ifPresent(spec -> columns.add(value(spec)));
    }
    parts().forEach((key, part) -> columns.add(part(part)));
    if (slot.finding() == Refractions.REFRACTION) {
      columns.add(vector("_m", " as spherical equivalent", PowerVector::m));
      columns.add(vector("_j0", ": cross-cylinder at 180 and 90 degrees", PowerVector::j0));
      columns.add(vector("_j45", ": cross-cylinder at 45 and 135 degrees", PowerVector::j45));
    }
    slot.finding()
        .methods()
        .ifPresent(
            list ->
                columns.add(
                    column("_method", Kind.TEXT, ": by which technique", SlotColumns::method)
                        .oneOf(list.concepts())));
    columns.add(
        column("_absent", Kind.TEXT, ": why there is no value", this::absent)
            .oneOf(List.of(Absence.values())));
    columns.add(
        column(
            "_count",
            Kind.INTEGER,
            ": how many values were recorded; the row shows the earliest",
            cell -> Optional.of((long) cell.count())));
    columns.add(
        column(
            "_fact",
            Kind.TEXT,
            ": which fact of the long table is shown, where there are several values",
            cell -> Optional.of(cell.key()).filter(any -> cell.count() > 1)));
    return columns;
  }

  /** Returns the parts of all variants by key, without the one that tells the slot apart. */
  private Map<String, Part<?, ?>> parts() {
    Map<String, Part<?, ?>> parts = new LinkedHashMap<>();
    for (Variant variant : layout.variants()) {
      variant.parts().forEach(part -> parts.putIfAbsent(part.key(), part));
    }
    slot.finding().distinguishing().forEach(parts::remove);
    return parts;
  }

  private Column<EyeRow> vector(
      String suffix, String meaning, ToDoubleFunction<PowerVector> component) {
    return column(
            suffix,
            Kind.NUMBER,
            meaning,
            cell ->
                PowerVectors.of(cell.fact()).map(component::applyAsDouble).map(SlotColumns::round))
        .in(Unit.DIOPTRE);
  }

  private static double round(double power) {
    return Numbers.round(power, 3).doubleValue();
  }

  private static Optional<String> method(Cell cell) {
    return cell.fact().method().map(Concept::word);
  }

  private Column<EyeRow> value(Spec spec) {
    return typed("", spec, "", cell -> cell.panel().flatMap(EncodedValue::value));
  }

  private Column<EyeRow> part(Part<?, ?> part) {
    String suffix = "_" + part.key().replace('-', '_');
    String meaning = ": " + part.code().display();
    return typed(
        suffix,
        part.spec(),
        meaning,
        cell -> cell.panel().flatMap(panel -> panel.found(part.key())));
  }

  private Column<EyeRow> typed(
      String suffix, Spec spec, String meaning, Function<Cell, Optional<Datum>> find) {
    Column<EyeRow> column =
        column(
            suffix,
            Cells.kind(spec),
            meaning,
            cell -> find.apply(cell).flatMap(datum -> Cells.of(spec, datum)));
    List<Concept> answers =
        spec instanceof Spec.Coded coded ? coded.answers().concepts() : List.of();
    return Usual.unit(spec).map(column::in).orElse(column).oneOf(answers);
  }

  private Column<EyeRow> column(
      String suffix, Kind kind, String meaning, Function<Cell, Optional<?>> cell) {
    return new Column<>(
        name + suffix,
        kind,
        slot.title() + meaning,
        Optional.empty(),
        List.of(),
        row -> row.cell(name).flatMap(cell));
  }

  private Optional<String> written(Cell cell) {
    return cell.panel().map(layout::writeChoice);
  }

  private Optional<Double> logMar(Cell cell) {
    return cell.logMar().map(Quantity::value).map(Number::doubleValue);
  }

  private Optional<String> absent(Cell cell) {
    return cell.fact().outcome().ifAbsent().map(Absence::word);
  }
}
