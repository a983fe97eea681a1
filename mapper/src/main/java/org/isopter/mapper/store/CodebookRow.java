package org.isopter.mapper.store;

import java.util.Optional;
import java.util.stream.Collectors;
import org.isopter.mapper.table.Column;

/**
 * What the codebook says of a column.
 *
 * @param table the table
 * @param column the column
 * @param filled how many of its cells are not empty
 * @param least the least of its cells, where they have an order
 * @param most the greatest of them
 */
public record CodebookRow(
    String table, Column<?> column, long filled, Optional<String> least, Optional<String> most) {

  /** Returns the words of the cells, each with its code, where they are a closed list. */
  Optional<String> answers() {
    String list =
        column.answers().stream()
            .map(answer -> answer.word() + " = " + answer.code().token())
            .collect(Collectors.joining("; "));
    return list.isEmpty() ? Optional.empty() : Optional.of(list);
  }
}
