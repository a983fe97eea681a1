/** Facts in words: as a record writes them, and as one colleague writes to another. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.text;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
