/** Checks records and FHIR, with source positions and suppressions. */
@NullMarked
package org.isopter.task.check;

import org.jspecify.annotations.NullMarked;
