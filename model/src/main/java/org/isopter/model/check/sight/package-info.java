/** Questions about what an eye sees that several rules ask. */
@NullMarked
package org.isopter.model.check.sight;

import org.jspecify.annotations.NullMarked;
