/** Closed lists of answers about seeing: charts, correction, colour, fields, refraction. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.answer.sight;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
