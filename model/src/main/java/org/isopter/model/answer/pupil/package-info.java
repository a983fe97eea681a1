/** Closed lists of answers about the pupils and the drugs that act on them. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.answer.pupil;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
