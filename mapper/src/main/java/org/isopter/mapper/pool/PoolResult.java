package org.isopter.mapper.pool;

/**
 * What came of a pool.
 *
 * @param counts what went in and what came of it
 * @param findings the rows of the long table, before any person was taken out
 * @param eyes the rows of the wide table, before any person was taken out
 * @param risk how far persons might still be known
 * @param aside what else to say
 */
public record PoolResult(PoolCounts counts, long findings, long eyes, Risk risk, Aside aside) {

  /**
   * How far persons might still be known.
   *
   * @param smallCells the groups of persons with traits that too few others share
   * @param least the persons in the smallest group who share all their traits; 0 without persons
   * @param suppressed the persons who were taken out, since too few others shared their traits
   */
  public record Risk(long smallCells, long least, long suppressed) {}

  /**
   * What else to say.
   *
   * @param repeated the examinations that are in the tables more than once
   * @param ageless the persons who are in no OMOP table, since their age is not known
   * @param skipped the documents that the pool held already, where it was added to
   */
  public record Aside(long repeated, long ageless, long skipped) {}
}
