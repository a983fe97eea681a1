/** What is asked about a note, and the answers. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.task.note;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
