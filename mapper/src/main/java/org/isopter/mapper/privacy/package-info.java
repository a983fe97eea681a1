/** Takes identities out of examinations, and tells how far persons might still be known. */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.mapper.privacy;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
