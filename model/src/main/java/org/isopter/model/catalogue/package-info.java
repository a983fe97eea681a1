/** The findings of the bedside eye examination, each described once. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.catalogue;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
