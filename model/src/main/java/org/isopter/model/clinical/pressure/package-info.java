/** Pressure in the eye: how far two measurements of it lie apart. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.clinical.pressure;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
