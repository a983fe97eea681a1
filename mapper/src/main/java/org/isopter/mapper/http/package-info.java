/**
 * Requests to a FHIR server: bounded in time and size, repeated where that is safe, and with a
 * token that no other host ever sees.
 */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.mapper.http;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
