/** Runs of a pool: its inputs, its key, its places and its report. */
@NullMarked
package org.isopter.task.pool;

import org.jspecify.annotations.NullMarked;
