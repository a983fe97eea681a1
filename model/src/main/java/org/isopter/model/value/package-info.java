/** Value types: codes, units, quantities, sites, acuities, and the results of checking them. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.value;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
