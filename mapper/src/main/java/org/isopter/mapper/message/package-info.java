/**
 * Examinations as messages of HL7 version 2 (ORU^R01, 2.5.1), the way out beside the reading of
 * such messages.
 */
@NullMarked
package org.isopter.mapper.message;

import org.jspecify.annotations.NullMarked;
