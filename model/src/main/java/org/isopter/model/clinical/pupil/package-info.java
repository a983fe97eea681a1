/** The pupils: size and inequality, the light and near responses, the afferent defect. */
@NullMarked
package org.isopter.model.clinical.pupil;

import org.jspecify.annotations.NullMarked;
