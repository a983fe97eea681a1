/** Runs of a pool: its inputs, its key, its places and its report. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.task.pool;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
