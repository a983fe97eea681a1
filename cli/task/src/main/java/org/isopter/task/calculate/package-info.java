/**
 * Single calculations of clinical practice, each with its source: lenses, prisms, published rules.
 */
@NullMarked
package org.isopter.task.calculate;

import org.jspecify.annotations.NullMarked;
