/** What HL7's older standards write alike: numbers and times, as FHIR writes them. */
@NullMarked
package org.isopter.mapper.hl7;

import org.jspecify.annotations.NullMarked;
