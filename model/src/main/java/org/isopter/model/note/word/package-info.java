/** The words of notes as data: files of phrases, and what part a word has in a sentence. */
@NullMarked
package org.isopter.model.note.word;

import org.jspecify.annotations.NullMarked;
