/**
 * What is reported of documents, as text, as FHIR OperationOutcome or as SARIF, and the exit status
 * that follows.
 */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.task.report;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
