/** The description language: what a finding is, said once, in a small closed form. */
@NullMarked
package org.isopter.model.shape;

import org.jspecify.annotations.NullMarked;
