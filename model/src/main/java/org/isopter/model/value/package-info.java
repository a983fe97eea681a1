/** Value types: codes, units, quantities, sites, acuities, and the results of checking them. */
@NullMarked
package org.isopter.model.value;

import org.jspecify.annotations.NullMarked;
