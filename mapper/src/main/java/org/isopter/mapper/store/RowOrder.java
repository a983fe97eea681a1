package org.isopter.mapper.store;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.table.Column;
import org.isopter.mapper.table.SparseRow;
import org.isopter.mapper.table.Table;

/**
 * The order of the rows of a table: by person, examination, and what else tells rows of an
 * examination apart. Pseudonyms are keyed hashes: by them, rows stand in an order that tells
 * nothing of that of the input. Rows that are alike in all of that, of a record that was read
 * twice, stand in an order that does not depend on which was read first.
 */
final class RowOrder {

  /** What the rows of one examination share. */
  private static final List<String> GROUP = List.of("subject", "examination");

  private static final List<String> WITHIN = List.of("fact", "part", "eye", "step");

  /** An empty cell comes last. */
  private static int compare(Optional<String> one, Optional<String> other) {
    return one.isPresent() && other.isPresent()
        ? one.get().compareTo(other.get())
        : Boolean.compare(one.isEmpty(), other.isEmpty());
  }

  /** A row, with what tells it apart looked up once. */
  private record Placed(List<Optional<String>> within, SparseRow row) {}

  private final List<Integer> group;
  private final List<Integer> within;

  RowOrder(Table<?> table) {
    List<String> names = table.columns().stream().<String>map(Column::name).toList();
    this.group = GROUP.stream().map(names::indexOf).toList();
    this.within = names.stream().filter(WITHIN::contains).map(names::indexOf).toList();
  }

  /** Returns the bytes by which the examinations of rows are in their order. */
  byte[] key(SparseRow row) {
    List<String> parts = new ArrayList<>();
    group.forEach(column -> parts.add(row.text(column).orElse("")));
    return String.join("\0", parts).getBytes(UTF_8);
  }

  /** Returns rows of one examination in their order. */
  List<SparseRow> sorted(List<SparseRow> rows) {
    List<Placed> placed = new ArrayList<>(rows.size());
    for (SparseRow row : rows) {
      List<Optional<String>> texts = new ArrayList<>(within.size());
      within.forEach(column -> texts.add(row.text(column)));
      placed.add(new Placed(texts, row));
    }
    placed.sort(RowOrder::compare);
    List<SparseRow> sorted = new ArrayList<>(rows.size());
    placed.forEach(one -> sorted.add(one.row()));
    return sorted;
  }

  private static int compare(Placed one, Placed other) {
    for (int i = 0; i < one.within().size(); i++) {
      int order = compare(one.within().get(i), other.within().get(i));
      if (order != 0) {
        return order;
      }
    }
    int order = Arrays.compare(one.row().columns(), other.row().columns());
    return order != 0
        ? order
        : Arrays.toString(one.row().values()).compareTo(Arrays.toString(other.row().values()));
  }
}
