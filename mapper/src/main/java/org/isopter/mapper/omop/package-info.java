/** Tables of the OMOP Common Data Model. */
@NullMarked
package org.isopter.mapper.omop;

import org.jspecify.annotations.NullMarked;
