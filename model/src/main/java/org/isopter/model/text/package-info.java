/** Facts in words: as a record writes them, and as one colleague writes to another. */
@NullMarked
package org.isopter.model.text;

import org.jspecify.annotations.NullMarked;
