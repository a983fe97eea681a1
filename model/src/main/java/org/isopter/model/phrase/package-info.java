/**
 * Phrases as data: what people write, what it stands for, in which language, and by what source.
 *
 * <p>{@link org.isopter.model.phrase.PhraseFile} is the form of the files.
 */
@NullMarked
package org.isopter.model.phrase;

import org.jspecify.annotations.NullMarked;
