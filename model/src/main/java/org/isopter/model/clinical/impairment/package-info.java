/**
 * Vision impairment of an eye and of a person, and the sets of acuity rules that use the same
 * edges.
 */
@NullMarked
package org.isopter.model.clinical.impairment;

import org.jspecify.annotations.NullMarked;
