/**
 * The isopter command: which commands there are, how its mistakes are reported, and where it
 * starts. The commands themselves are below, and what they do is in {@code org.isopter.task}.
 */
@NullMarked
package org.isopter.cli;

import org.jspecify.annotations.NullMarked;
