/** JSON kept to the digit: values, where they stand, and how much of them is accepted. */
@NullMarked
package org.isopter.mapper.json;

import org.jspecify.annotations.NullMarked;
