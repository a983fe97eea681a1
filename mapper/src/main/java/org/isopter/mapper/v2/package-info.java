/**
 * Messages of HL7 version 2 as FHIR observations, for the reader of what other systems write; no
 * finding is decided here.
 */
@NullMarked
package org.isopter.mapper.v2;

import org.jspecify.annotations.NullMarked;
