/** Colour vision: plate tests by edition and rule, red saturation. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.clinical.colour;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
