package org.isopter.model.derive;

import java.util.Optional;
import org.isopter.model.exam.FactKey;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Site;

/**
 * A value that was found, with the name of its fact.
 *
 * @param key the name of the fact
 * @param site where it was found
 * @param method the technique, when stated
 * @param value what was found
 * @param <V> the type of the value
 */
record Seen<V>(FactKey key, Site site, Optional<Concept> method, V value) {}
