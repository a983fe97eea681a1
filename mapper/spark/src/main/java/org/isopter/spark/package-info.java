/** Pools examinations as research tables on a cluster of machines, with Apache Spark. */
@NullMarked
package org.isopter.spark;

import org.jspecify.annotations.NullMarked;
