/** Reads files, lines and folders through, in constant memory, with a report. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.mapper.foreign.run;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
