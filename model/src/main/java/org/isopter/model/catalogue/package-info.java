/** The findings of the bedside eye examination, each described once. */
@NullMarked
package org.isopter.model.catalogue;

import org.jspecify.annotations.NullMarked;
