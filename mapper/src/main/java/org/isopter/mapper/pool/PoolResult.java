package org.isopter.mapper.pool;

/**
 * What came of a pool.
 *
 * @param counts what went in and what came of it
 * @param findings the rows of the long table
 * @param eyes the rows of the wide table
 * @param smallCells the groups of persons with traits that too few others share
 * @param repeated the examinations that are in the tables more than once
 */
public record PoolResult(
    PoolCounts counts, long findings, long eyes, long smallCells, long repeated) {}
