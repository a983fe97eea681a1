/**
 * Consistency rules: what a record that can be read still gets wrong. Each rule has a stable id, a
 * clinical reason and a source, and speaks of stated facts only: what is not there is never taken
 * for normal, and facts of different times are never held against one another.
 *
 * <p>A rule tells of the record, not of the eye: that none speaks says nothing about health.
 */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.check;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
