/** Writes an examination in each form, reads it again and compares. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.task.roundtrip;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
