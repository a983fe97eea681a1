/** Tells of a pool what one looks at first: how much there is, how it is spread, what is odd. */
@NullMarked
package org.isopter.mapper.describe;

import org.jspecify.annotations.NullMarked;
