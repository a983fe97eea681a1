package org.isopter.mapper.pool;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.isopter.mapper.io.OwnerFile;
import org.isopter.mapper.io.Passing;
import org.isopter.mapper.omop.OmopTables;
import org.isopter.mapper.store.PoolTables;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/**
 * A folder that appears under its name only when everything in it is complete, for its owner alone:
 * whoever is to see it is let in by the owner.
 */
final class PoolFolder implements AutoCloseable {

  /** All that pools are made of. */
  private static final Pattern OWN =
      Pattern.compile(
          "(findings|examinations|steps)\\.(parquet|csv|ndjson)|codebook\\.(csv|md)|(small-cells|risk)\\.csv"
              + "|(datapackage|provenance)\\.json|additions\\.txt|(leftover|bundles)\\.ndjson|tables\\.duckdb|omop"
              + "|omop/("
              + String.join("|", OmopTables.TABLES)
              + ")\\.(parquet|csv|ndjson)");

  private final Path target;
  private final Path aside;
  private final Path older;

  private PoolFolder(Path target) {
    this.target = target;
    this.aside = target.resolveSibling("." + target.getFileName() + ".part");
    this.older = target.resolveSibling("." + target.getFileName() + ".older");
  }

  /**
   * Starts a folder beside its target.
   *
   * @param replace whether an older pool in the target may be taken away at the end
   * @throws FaultException when something else is in the target already
   */
  static PoolFolder begin(Path folder, boolean replace) throws IOException {
    // Where a link stands for the folder, what it leads to is replaced, and not the link.
    Path target = Files.exists(folder) ? folder.toRealPath() : folder.toAbsolutePath().normalize();
    boolean pool = replace && PoolTables.isPool(target);
    if (Files.exists(target) && !pool && !isEmpty(target)) {
      throw taken(folder, "something that is there already", "a new or empty folder");
    }
    Optional<String> other = pool ? other(target) : Optional.empty();
    if (other.isPresent()) {
      String wanted = "nothing but a pool in a folder that is replaced";
      throw taken(folder, "\"" + other.get() + "\" beside the older pool", wanted);
    }
    PoolFolder begun = new PoolFolder(target);
    begun.clear();
    OwnerFile.createFolder(Passing.add(begun.aside));
    return begun;
  }

  private static FaultException taken(Path folder, String seen, String wanted) {
    String advice = "name another folder, or take this one away first";
    return new FaultException(new Fault(folder.toString(), seen, wanted, advice));
  }

  /** Returns what is in a folder and part of no pool: to replace the pool would destroy it. */
  private static Optional<String> other(Path folder) throws IOException {
    try (Stream<Path> inside = Files.walk(folder)) {
      return inside
          .filter(path -> !path.equals(folder))
          .map(path -> folder.relativize(path).toString().replace('\\', '/'))
          .filter(name -> !OWN.matcher(name).matches())
          .sorted()
          .findFirst();
    }
  }

  /**
   * What an interrupted run left is no part of this one; an older pool that it moved comes back.
   */
  private void clear() throws IOException {
    Passing.delete(aside);
    if (Files.exists(older) && !Files.exists(target)) {
      Passing.rename(older, target);
    }
    Passing.delete(older);
  }

  /** Returns the older pool in the place of this one; empty where there is none. */
  Optional<Path> older() {
    return PoolTables.isPool(target) ? Optional.of(target) : Optional.empty();
  }

  Path file(String name) {
    return aside.resolve(name);
  }

  void commit() throws IOException {
    if (Files.exists(target)) {
      Passing.rename(target, older);
    }
    Passing.rename(aside, target);
    Passing.delete(older);
  }

  @Override
  public void close() throws IOException {
    Passing.delete(aside);
  }

  private static boolean isEmpty(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return false;
    }
    try (Stream<Path> inside = Files.list(folder)) {
      return inside.findAny().isEmpty();
    }
  }
}
