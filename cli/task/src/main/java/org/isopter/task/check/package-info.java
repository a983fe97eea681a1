/** Checks records and FHIR, with source positions and suppressions. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.task.check;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
