/** Lenses: power vectors, transposition, vertex distance, prism. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.clinical.lens;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
