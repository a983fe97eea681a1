/**
 * Turns records into FHIR and FHIR of any system into records, with the file of left-overs beside
 * them.
 */
@NullMarked
package org.isopter.task.convert;

import org.jspecify.annotations.NullMarked;
