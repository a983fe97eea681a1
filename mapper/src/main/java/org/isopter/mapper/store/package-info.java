/** Tables in a database of this process, their files, and their codebook. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.mapper.store;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
