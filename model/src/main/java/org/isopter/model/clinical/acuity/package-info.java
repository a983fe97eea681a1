/**
 * Visual acuity: notations, equivalents, partial lines, low vision, change between two readings.
 */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.clinical.acuity;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
