/** Records with what must, and what must never, be said of them. */
@NullMarked
package org.isopter.model.scenario;

import org.jspecify.annotations.NullMarked;
