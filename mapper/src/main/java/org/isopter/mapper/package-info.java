/** Reads the project's formats and writes FHIR R4. */
@NullMarked
package org.isopter.mapper;

import org.jspecify.annotations.NullMarked;
