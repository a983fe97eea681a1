/**
 * Turns records into FHIR and FHIR of any system into records, with the file of left-overs beside
 * them.
 */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.task.convert;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
