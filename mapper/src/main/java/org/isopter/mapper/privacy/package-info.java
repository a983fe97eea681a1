/** Takes identities out of examinations, and tells how far persons might still be known. */
@NullMarked
package org.isopter.mapper.privacy;

import org.jspecify.annotations.NullMarked;
