/** JSON as it stands in its text, cut into tokens and decoded on demand. */
@NullMarked
package org.isopter.mapper.json.token;

import org.jspecify.annotations.NullMarked;
