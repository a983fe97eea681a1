/**
 * The description language: what a finding is, how its value is laid out, and what may be recorded.
 */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.finding;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
