package org.isopter.profiles.compiled;

/** Looks at an item and reports what is wrong with it. */
interface Check {

  /** Reports what is wrong. */
  void check(Item item, Judgement report);
}
