/** Finds the eye that a resource is about. */
@NullMarked
package org.isopter.mapper.foreign.side;

import org.jspecify.annotations.NullMarked;
