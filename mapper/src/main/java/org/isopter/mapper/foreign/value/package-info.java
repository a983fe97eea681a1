/** Takes the value of an observation or a component as the catalogue wants it. */
@NullMarked
package org.isopter.mapper.foreign.value;

import org.jspecify.annotations.NullMarked;
