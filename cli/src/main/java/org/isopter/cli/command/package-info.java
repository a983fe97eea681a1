/** The commands: options and choice of output, no logic. */
@NullMarked
package org.isopter.cli.command;

import org.jspecify.annotations.NullMarked;
