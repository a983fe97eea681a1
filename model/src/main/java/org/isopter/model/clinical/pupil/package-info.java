/** The pupils: size and inequality, the light and near responses, the afferent defect. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.clinical.pupil;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
