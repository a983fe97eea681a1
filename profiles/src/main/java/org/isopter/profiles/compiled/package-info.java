/** Judges resources by checks that are compiled once from the elements of each profile. */
@NullMarked
package org.isopter.profiles.compiled;

import org.jspecify.annotations.NullMarked;
