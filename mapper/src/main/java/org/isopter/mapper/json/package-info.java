/** JSON kept to the digit: values, where they stand, and how much of them is accepted. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.mapper.json;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
