/**
 * The examination sheet for a browser: what its fields hold, what the record makes of it.
 *
 * <p>All of it compiles to a script; what a field means is decided by the model alone.
 */
@NullMarked
package org.isopter.sheet;

import org.jspecify.annotations.NullMarked;
