/** What a caller decides about reading, and what comes of it. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.mapper.foreign.reading;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
