/**
 * Clinical documents (HL7 CDA R2, C-CDA) as FHIR observations, for the reader of what other systems
 * write; no finding is decided here.
 */
@NullMarked
package org.isopter.mapper.cda;

import org.jspecify.annotations.NullMarked;
