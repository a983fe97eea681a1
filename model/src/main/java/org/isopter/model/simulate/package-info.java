/** Invented cohorts: persons, visits and findings drawn from stated shares. */
@NullMarked
package org.isopter.model.simulate;

import org.jspecify.annotations.NullMarked;
