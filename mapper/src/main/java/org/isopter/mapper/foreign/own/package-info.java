/** Finds what was written here among the resources of others. */
@NullMarked
package org.isopter.mapper.foreign.own;

import org.jspecify.annotations.NullMarked;
