/** Pools examinations of any number of sources as research tables without identities. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.mapper.pool;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
