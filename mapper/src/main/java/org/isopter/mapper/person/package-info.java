/** What is known of the persons of a pool besides their examinations. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.mapper.person;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
