/** What a caller decides about reading, and what comes of it. */
@NullMarked
package org.isopter.mapper.foreign.reading;

import org.jspecify.annotations.NullMarked;
