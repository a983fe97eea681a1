/**
 * The isopter command: one class for each subcommand, which only says what there is to choose, and
 * small classes that do the work.
 */
@NullMarked
package org.isopter.cli;

import org.jspecify.annotations.NullMarked;
