/** The FHIR R4 profiles of the record, and validation against them. */
@NullMarked
package org.isopter.profiles;

import org.jspecify.annotations.NullMarked;
