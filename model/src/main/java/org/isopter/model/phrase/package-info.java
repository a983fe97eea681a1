/**
 * Phrases as data: what people write, what it stands for, in which language, and by what source.
 *
 * <p>{@link org.isopter.model.phrase.PhraseFile} is the form of the files.
 */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.phrase;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
