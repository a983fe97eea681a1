/** Closed lists of answers about alignment, movements and double vision. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.answer.movement;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
