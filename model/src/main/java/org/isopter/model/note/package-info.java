/**
 * Bedside shorthand: read into facts, and written from them.
 *
 * <p>What is not understood is given back with its place and the nearest understood form; nothing
 * is guessed and nothing is dropped. {@link org.isopter.model.note.NoteReader} and {@link
 * org.isopter.model.note.NoteWriter} are all that others need.
 */
@API(status = Status.STABLE)
@NullMarked
package org.isopter.model.note;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.jspecify.annotations.NullMarked;
