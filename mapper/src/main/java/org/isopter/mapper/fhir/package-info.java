/** Examinations as FHIR R4 JSON: one writer and one reader, both over the catalogue. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.mapper.fhir;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
