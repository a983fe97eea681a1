/**
 * Messages of HL7 version 2 received over the network (MLLP): each is kept in a folder before it is
 * acknowledged, and nothing is read of it here but its header.
 */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.mapper.mllp;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
