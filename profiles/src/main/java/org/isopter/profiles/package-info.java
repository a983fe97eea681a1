/** The FHIR R4 profiles of the record, and validation against them. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.profiles;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
