/**
 * Files and streams: written whole or not at all, read a line at a time, and never quiet about a
 * failure.
 */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.task.io;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
