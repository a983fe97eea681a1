package org.isopter.mapper.pool;

import org.isopter.mapper.privacy.Suppression;

/**
 * What came of a pool.
 *
 * @param counts what went in and what came of it
 * @param tables what stands in the tables
 * @param risk how far persons might still be known
 * @param aside what else to say
 */
public record PoolResult(PoolCounts counts, Tables tables, Risk risk, Aside aside) {

  /**
   * What stands in the tables, without the persons who were taken out.
   *
   * @param persons the persons
   * @param examinations the examinations, each once
   * @param findings the rows of the long table
   * @param eyes the rows of the wide table
   */
  public record Tables(long persons, long examinations, long findings, long eyes) {}

  /**
   * How far persons might still be known.
   *
   * @param smallCells the groups of persons with traits that too few others share
   * @param least the persons in the smallest group who share all their traits; 0 without persons
   * @param filling the persons whose visits fill the period of what this run read, so that whoever
   *     knows when it began and ended knows their days; 0 where identities stay
   * @param taken what was taken out, since too few others shared the traits
   */
  public record Risk(long smallCells, long least, long filling, Suppression.Taken taken) {}

  /**
   * What else to say.
   *
   * @param repeated the examinations that are in the tables more than once
   * @param ageless the persons who are in no OMOP table, since their age is not known
   * @param skipped the documents that the pool held already, where it was added to
   */
  public record Aside(long repeated, long ageless, long skipped) {}
}
