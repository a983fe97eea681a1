/** Sends transactions to a FHIR server and fetches what it holds. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.task.exchange;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
