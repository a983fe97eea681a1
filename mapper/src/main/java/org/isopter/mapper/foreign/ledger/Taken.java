package org.isopter.mapper.foreign.ledger;

import org.isopter.mapper.json.PlacedLeaf;

/**
 * A leaf that was understood.
 *
 * @param leaf the leaf and where it stood
 * @param rule the id of the rule that took it; empty where it says what the catalogue says
 */
public record Taken(PlacedLeaf leaf, String rule) {}
