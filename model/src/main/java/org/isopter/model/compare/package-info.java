/** Two examinations of one person against each other. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.compare;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
