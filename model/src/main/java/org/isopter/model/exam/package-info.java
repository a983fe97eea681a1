/** One examination: a header and a list of facts. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.exam;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
