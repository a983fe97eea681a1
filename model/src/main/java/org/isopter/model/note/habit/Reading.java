package org.isopter.model.note.habit;

/**
 * One thing that an item may mean, written so that it is read.
 *
 * @param kind what is not clear: eyes, both, notation, light, direction, time or denial
 * @param choice what this reading chooses, in a word or two
 * @param text the item in a form that is read to the last word
 */
public record Reading(String kind, String choice, String text) {}
