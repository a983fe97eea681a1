package org.isopter.mapper.pool;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * What a pool is to hold.
 *
 * @param folder the folder that is made; it may not be there yet, or must be empty
 * @param formats the file formats of the tables, at least one
 * @param database whether the tables are also left as a database file
 * @param bundles whether the examinations are also written as FHIR bundles
 * @param deidentifier takes the identities out; empty where they are to stay
 * @param wholeLeft where what was left over is written word for word, which holds identities;
 *     within the folder there is only a list without content unless identities stay
 * @param smallest the fewest persons that may share their traits without being listed
 * @param traits the columns of the wide table by which a person might be known
 */
public record PoolPlan(
    Path folder,
    List<TableFormat> formats,
    boolean database,
    boolean bundles,
    Optional<Deidentifier> deidentifier,
    Optional<Path> wholeLeft,
    int smallest,
    List<String> traits) {

  /** Fewer persons than this are a small cell, unless another number is set. */
  public static final int USUAL_SMALLEST = 5;

  /** The traits by which small cells are found, unless others are named. */
  public static final List<String> USUAL_TRAITS = List.of("age", "sex", "setting");

  public PoolPlan {
    formats = List.copyOf(formats);
    traits = List.copyOf(traits);
    if (formats.isEmpty() || traits.isEmpty() || smallest < 1) {
      throw new IllegalArgumentException("a pool needs a format, a trait and a smallest cell");
    }
  }

  /** Returns a pool in Parquet, without identities. */
  public static PoolPlan of(Path folder, Deidentifier deidentifier) {
    return new PoolPlan(
        folder,
        List.of(TableFormat.PARQUET),
        false,
        false,
        Optional.of(deidentifier),
        Optional.empty(),
        USUAL_SMALLEST,
        USUAL_TRAITS);
  }
}
