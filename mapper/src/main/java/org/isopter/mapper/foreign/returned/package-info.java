/** Finds the records that were written here and came back among the resources of others. */
@NullMarked
package org.isopter.mapper.foreign.returned;

import org.jspecify.annotations.NullMarked;
