/** Translates one observation, or the parts of a refraction together, into facts. */
@NullMarked
package org.isopter.mapper.foreign.observation;

import org.jspecify.annotations.NullMarked;
