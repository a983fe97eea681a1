/** Finds files, folders and streams and takes them apart into documents. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.task.input;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
