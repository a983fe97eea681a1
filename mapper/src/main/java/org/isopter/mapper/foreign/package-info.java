/**
 * What other systems wrote: taken by named rules where it is safe, kept verbatim where it is not.
 *
 * <p>{@link org.isopter.mapper.foreign.ForeignReader} reads, {@link
 * org.isopter.mapper.foreign.ForeignWriter} writes out again with everything that was kept, and
 * {@link org.isopter.mapper.foreign.vocabulary.ForeignRules} lists the rules.
 */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.mapper.foreign;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
