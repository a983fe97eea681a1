package org.isopter.mapper.describe;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.store.PoolTables;

/** Asks the tables of a pool. */
public final class Survey {

  /** The most numbers of one finding and eye that are drawn; more say no more. */
  private static final int DRAWN = 20_000;

  private final PoolTables tables;
  private final Coarse coarse;

  private Survey(PoolTables tables, Coarse coarse) {
    this.tables = tables;
    this.coarse = coarse;
  }

  /**
   * Describes the pool in a folder.
   *
   * @throws org.isopter.model.value.FaultException when the folder holds no pool
   * @throws IOException when a table of the pool cannot be read
   */
  public static Description of(Path folder) throws IOException {
    return of(folder, Optional.empty(), Coarse.NOT);
  }

  /**
   * Describes the pool in a folder, and names the inputs of numbers to look at.
   *
   * @param origins the file that says where each examination was read
   * @param coarse how few persons nothing may be said of
   * @throws org.isopter.model.value.FaultException when the folder holds no pool
   * @throws IOException when a table of the pool cannot be read
   */
  public static Description of(Path folder, Optional<Path> origins, Coarse coarse)
      throws IOException {
    try (PoolTables tables = PoolTables.open(folder, origins)) {
      return new Survey(tables, coarse).describe();
    } catch (SQLException failed) {
      throw new IOException("the tables could not be asked: " + PoolTables.why(failed), failed);
    }
  }

  private Description describe() throws SQLException {
    List<Listing> listings = new ArrayList<>();
    for (Question question : Question.values()) {
      if (question != Question.FAR_OUT || !coarse.isCoarse()) {
        listings.add(listing(question));
      }
    }
    // A picture of numbers shows where single ones lie.
    return new Description(listings, coarse.isCoarse() ? List.of() : spreads(), answers());
  }

  private Listing listing(Question question) throws SQLException {
    PoolTables.Rows rows = tables.ask(question.sql());
    List<List<String>> cells =
        rows.cells().stream().map(row -> row.stream().map(Survey::text).toList()).toList();
    return coarse.of(
        new Listing(question.title(), question.remark(), rows.columns(), cells),
        question.sayings());
  }

  private List<Spread> spreads() throws SQLException {
    Map<String, Spread> byTitle = new LinkedHashMap<>();
    List<Spread> spreads = new ArrayList<>();
    for (List<Optional<Object>> row : tables.ask(Question.numbers(DRAWN)).cells()) {
      Spread empty =
          new Spread(
              text(row.get(0)), text(row.get(1)), text(row.get(5)), text(row.get(3)), Map.of());
      String key = empty.toString();
      Map<String, List<Double>> byEye =
          new LinkedHashMap<>(byTitle.getOrDefault(key, empty).byEye());
      byEye.put(text(row.get(2)), numbers(row.get(4)));
      byTitle.put(
          key, new Spread(empty.finding(), empty.part(), empty.condition(), empty.unit(), byEye));
    }
    spreads.addAll(byTitle.values());
    return spreads;
  }

  private List<Answered> answers() throws SQLException {
    Map<String, Answered> byTitle = new LinkedHashMap<>();
    for (List<Optional<Object>> row : tables.ask(Question.answers()).cells()) {
      String finding = text(row.get(0));
      String part = text(row.get(1));
      Answered before = byTitle.get(finding + "/" + part);
      Map<String, Long> counts = new LinkedHashMap<>(before == null ? Map.of() : before.counts());
      coarse
          .count((Long) row.get(3).orElse(0L), (Long) row.get(4).orElse(0L))
          .ifPresent(count -> counts.put(text(row.get(2)), count));
      byTitle.put(finding + "/" + part, new Answered(finding, part, counts));
    }
    return byTitle.values().stream().filter(one -> !one.counts().isEmpty()).toList();
  }

  private static List<Double> numbers(Optional<Object> list) throws SQLException {
    List<Double> numbers = new ArrayList<>();
    if (list.orElse(null) instanceof java.sql.Array array) {
      for (Object number : (Object[]) array.getArray()) {
        numbers.add((Double) number);
      }
    }
    return numbers;
  }

  private static String text(Optional<Object> cell) {
    return cell.map(Object::toString).orElse("");
  }
}
