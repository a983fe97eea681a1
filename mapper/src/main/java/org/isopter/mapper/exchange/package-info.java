/**
 * What is exchanged with a FHIR server: transactions sent so that nothing is lost and nothing is
 * stored twice, and searches and exports fetched as lines.
 */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.mapper.exchange;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
