/**
 * Files and streams: written whole or not at all, read a line at a time, and never quiet about a
 * failure.
 */
@NullMarked
package org.isopter.task.io;

import org.jspecify.annotations.NullMarked;
