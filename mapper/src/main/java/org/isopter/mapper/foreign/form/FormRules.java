package org.isopter.mapper.foreign.form;

import org.isopter.mapper.foreign.observation.Translation;
import org.isopter.mapper.json.Raw;

/** The rules by which Observations are read. */
interface FormRules {

  /** Says whether the code of an Observation names a finding, or a part of one. */
  boolean names(Raw.Obj observation);

  /** Returns what the rules make of an Observation. */
  Translation read(Raw.Obj observation);
}
