/**
 * What is reported of documents, as text, as FHIR OperationOutcome or as SARIF, and the exit status
 * that follows.
 */
@NullMarked
package org.isopter.task.report;

import org.jspecify.annotations.NullMarked;
