/** Guided entry of an examination, step by step, without a terminal of its own. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.entry;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
