/** An examination as a page in plain words. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.letter;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
