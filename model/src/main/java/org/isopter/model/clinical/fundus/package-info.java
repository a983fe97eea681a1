/** Scales of the disc and the retina. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.clinical.fundus;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
