package org.isopter.task.pool;

import java.util.Optional;
import org.isopter.mapper.person.PersonsFile;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.mapper.privacy.Deidentifier;

/**
 * What examinations are pooled into.
 *
 * @param plan which tables are made, where, and what is taken out of them
 * @param persons what a study knows of its persons; empty for nothing
 * @param older makes the pseudonyms of a key that is being replaced, for the file of origins; empty
 *     where none is
 * @param strict whether records with errors by the consistency rules are left over
 */
public record PoolRequest(
    PoolPlan plan, Optional<PersonsFile> persons, Optional<Deidentifier> older, boolean strict) {

  /** Returns a request for the tables of a plan alone. */
  public static PoolRequest of(PoolPlan plan) {
    return new PoolRequest(plan, Optional.empty(), Optional.empty(), false);
  }
}
