/**
 * Visual acuity: notations, equivalents, partial lines, low vision, change between two readings.
 */
@NullMarked
package org.isopter.model.clinical.acuity;

import org.jspecify.annotations.NullMarked;
