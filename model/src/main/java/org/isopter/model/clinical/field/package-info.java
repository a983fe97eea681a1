/**
 * The visual field: patterns over both eyes and where on the pathway they fit, the blind spot,
 * perimetry.
 */
@NullMarked
package org.isopter.model.clinical.field;

import org.jspecify.annotations.NullMarked;
