/** Invented cohorts: persons, visits and findings drawn from stated shares. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.simulate;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
