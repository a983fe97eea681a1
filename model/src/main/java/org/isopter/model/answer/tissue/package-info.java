/** Closed lists of answers about the eye itself: its segments, disc, fundus and pressure. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.answer.tissue;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
