/** The isopter command. */
@NullMarked
package org.isopter.cli;

import org.jspecify.annotations.NullMarked;
