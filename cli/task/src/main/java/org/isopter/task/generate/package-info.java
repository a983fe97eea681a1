/** Makes invented examinations on every core. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.task.generate;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
