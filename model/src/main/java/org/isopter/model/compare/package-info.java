/** Two examinations of one person against each other. */
@NullMarked
package org.isopter.model.compare;

import org.jspecify.annotations.NullMarked;
