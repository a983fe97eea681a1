/** One examination: a header and a list of facts. */
@NullMarked
package org.isopter.model.exam;

import org.jspecify.annotations.NullMarked;
