/** An examination in plain words, for the letter that a colleague receives. */
@NullMarked
package org.isopter.model.summary;

import org.jspecify.annotations.NullMarked;
