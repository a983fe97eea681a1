package org.isopter.mapper.table;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Unit;

/**
 * A column of a table: what it is called, what its cells hold, and how a cell is found.
 *
 * @param name the name, in lower case with underscores
 * @param kind what its cells hold
 * @param meaning what a cell says, as a sentence
 * @param unit the unit of its numbers, where they have one
 * @param answers the words of its cells, where they are a closed list
 * @param cell finds the cell of a row; empty where the row has none
 * @param <R> what a row is made of
 */
public record Column<R>(
    String name,
    Kind kind,
    String meaning,
    Optional<Unit> unit,
    List<Concept> answers,
    Function<R, Optional<?>> cell) {

  public Column {
    answers = List.copyOf(answers);
  }

  Column<R> in(Unit measure) {
    return new Column<>(name, kind, meaning, Optional.of(measure), answers, cell);
  }

  Column<R> oneOf(List<Concept> list) {
    return new Column<>(name, kind, meaning, unit, list, cell);
  }
}
