/** An examination as a page in plain words. */
@NullMarked
package org.isopter.model.letter;

import org.jspecify.annotations.NullMarked;
