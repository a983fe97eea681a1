/** Pages for people and programs: the catalogue, the rules, a comparison, a summary. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.task.page;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
