/** Puts what was made of documents into files and folders. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.task.output;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
