/** Examinations as flat tables: the columns come from the catalogue, the rows from examinations. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.mapper.table;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
