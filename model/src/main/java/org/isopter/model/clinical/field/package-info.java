/**
 * The visual field: patterns over both eyes and where on the pathway they fit, the blind spot,
 * perimetry.
 */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.clinical.field;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
