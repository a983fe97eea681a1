package org.isopter.mapper.foreign;

/**
 * One habit of others that is understood.
 *
 * @param id the name that reports use
 * @param kind what it is about
 * @param reason why it is safe, in one sentence
 * @param takes an observation in JSON that the rule takes
 * @param refuses an observation in JSON that looks alike and is not taken by it
 */
public record ForeignRule(String id, String kind, String reason, String takes, String refuses) {}
