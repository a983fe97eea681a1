package org.isopter.mapper.pool;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.store.TableFormat;

/**
 * What a pool is to hold.
 *
 * @param folder the folder that is made; it may not be there yet, or must be empty
 * @param existing what becomes of an older pool in the folder
 * @param formats the file formats of the tables, at least one
 * @param database whether the tables are also left as a database file
 * @param bundles whether the examinations are also written as FHIR bundles
 * @param deidentifier takes the identities out; empty where they are to stay
 * @param wholeLeft where what was left over is written word for word, which holds identities;
 *     within the folder there is only a list without content unless identities stay
 * @param origins where it is written which input each examination was read from, which leads back
 *     to persons; empty where it is not wanted
 * @param vocabulary the folder of the vocabulary for tables of the OMOP Common Data Model; empty
 *     where none are wanted
 * @param smallest the fewest persons that may share their traits without being listed
 * @param suppress whether persons who share their traits with fewer are taken out
 * @param traits the columns of the wide table by which a person might be known
 */
public record PoolPlan(
    Path folder,
    Existing existing,
    List<TableFormat> formats,
    boolean database,
    boolean bundles,
    Optional<Deidentifier> deidentifier,
    Optional<Path> wholeLeft,
    Optional<Path> origins,
    Optional<Path> vocabulary,
    int smallest,
    boolean suppress,
    List<String> traits) {

  /** What becomes of an older pool. */
  public enum Existing {
    /** It stays, and no new one is made. */
    KEPT,
    /** It is taken away once the new one is complete. */
    REPLACED,
    /** What is new is added to it; both together take its place once they are complete. */
    ADDED_TO
  }

  /** Fewer persons than this are a small cell, unless another number is set. */
  public static final int USUAL_SMALLEST = 5;

  /** The traits by which small cells are found, unless others are named. */
  public static final List<String> USUAL_TRAITS = List.of("age", "sex", "setting");

  public PoolPlan {
    formats = formats.stream().distinct().toList();
    traits = traits.stream().distinct().toList();
    if (formats.isEmpty() || traits.isEmpty() || smallest < 1) {
      throw new IllegalArgumentException("a pool needs a format, a trait and a smallest cell");
    }
    if (suppress && bundles) {
      throw new IllegalArgumentException("bundles are written before persons can be counted");
    }
    if (existing == Existing.ADDED_TO && (suppress || deidentifier.isEmpty())) {
      throw new IllegalArgumentException("what was taken out, or is not keyed, cannot be added to");
    }
  }

  /** Returns a pool in Parquet, without identities. */
  public static PoolPlan of(Path folder, Deidentifier deidentifier) {
    return plain(folder, Optional.of(deidentifier));
  }

  /** Returns a pool in Parquet that keeps identities. */
  public static PoolPlan identified(Path folder) {
    return plain(folder, Optional.empty());
  }

  private static PoolPlan plain(Path folder, Optional<Deidentifier> deidentifier) {
    return new PoolPlan(
        folder,
        Existing.KEPT,
        List.of(TableFormat.PARQUET),
        false,
        false,
        deidentifier,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        USUAL_SMALLEST,
        false,
        USUAL_TRAITS);
  }

  /** Returns this plan in other formats. */
  public PoolPlan in(List<TableFormat> others) {
    return copy(folder, existing, others, database, bundles);
  }

  /** Returns this plan, putting the pool in the place of an older one. */
  public PoolPlan replacing() {
    return copy(folder, Existing.REPLACED, formats, database, bundles);
  }

  /** Returns this plan, adding what is new to an older pool. */
  public PoolPlan adding() {
    return copy(folder, Existing.ADDED_TO, formats, database, bundles);
  }

  boolean isAdding() {
    return existing == Existing.ADDED_TO;
  }

  /** Returns this plan, leaving the tables as a database file too. */
  public PoolPlan withDatabase() {
    return copy(folder, existing, formats, true, bundles);
  }

  /** Returns this plan, writing the examinations as bundles too. */
  public PoolPlan withBundles() {
    return copy(folder, existing, formats, database, true);
  }

  /** Returns this plan with what is left over written word for word to a private file. */
  public PoolPlan leaving(Optional<Path> file) {
    return paths(file, origins, vocabulary);
  }

  /** Returns this plan with the origins of the examinations written to a private file. */
  public PoolPlan tracing(Optional<Path> file) {
    return paths(wholeLeft, file, vocabulary);
  }

  /** Returns this plan with OMOP tables by a vocabulary. */
  public PoolPlan omop(Optional<Path> concepts) {
    return paths(wholeLeft, origins, concepts);
  }

  /** Returns this plan with small cells of other traits. */
  public PoolPlan risk(int least, List<String> others, boolean without) {
    return new PoolPlan(
        folder,
        existing,
        formats,
        database,
        bundles,
        deidentifier,
        wholeLeft,
        origins,
        vocabulary,
        least,
        without,
        others);
  }

  private PoolPlan paths(Optional<Path> left, Optional<Path> from, Optional<Path> concepts) {
    return new PoolPlan(
        folder,
        existing,
        formats,
        database,
        bundles,
        deidentifier,
        left,
        from,
        concepts,
        smallest,
        suppress,
        traits);
  }

  private PoolPlan copy(
      Path to, Existing again, List<TableFormat> forms, boolean store, boolean fhir) {
    return new PoolPlan(
        to,
        again,
        forms,
        store,
        fhir,
        deidentifier,
        wholeLeft,
        origins,
        vocabulary,
        smallest,
        suppress,
        traits);
  }
}
