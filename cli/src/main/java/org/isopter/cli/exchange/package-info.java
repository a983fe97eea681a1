/** Options about servers: how one is reached, and what is sent to it. */
@NullMarked
package org.isopter.cli.exchange;

import org.jspecify.annotations.NullMarked;
