/** The rim where HAPI FHIR does what it is best at: XML, and resources as Java objects. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.mapper.hapi;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
