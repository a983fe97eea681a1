/** Makes invented examinations on every core. */
@NullMarked
package org.isopter.task.generate;

import org.jspecify.annotations.NullMarked;
