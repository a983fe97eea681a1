/** The rim where HAPI FHIR does what it is best at: XML, and resources as Java objects. */
@NullMarked
package org.isopter.mapper.hapi;

import org.jspecify.annotations.NullMarked;
