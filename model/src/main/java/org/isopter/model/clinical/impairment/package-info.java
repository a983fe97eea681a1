/**
 * Vision impairment of an eye and of a person, and the sets of acuity rules that use the same
 * edges.
 */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.clinical.impairment;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
