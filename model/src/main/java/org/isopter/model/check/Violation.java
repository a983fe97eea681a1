package org.isopter.model.check;

import org.isopter.model.value.Site;

/**
 * One place where a record breaks a rule.
 *
 * @param rule the rule
 * @param site the eye, or both eyes together
 * @param path where it stands in the record, for instance {@code findings.disc-swelling.right}
 * @param seen the facts that break the rule, as they were recorded
 * @param wanted what would keep the rule
 * @param suggestion what to do about it
 */
public record Violation(
    ConsistencyRule rule, Site site, String path, String seen, String wanted, String suggestion) {

  /** Returns the violation on one line. */
  @Override
  public String toString() {
    return "%s %s %s: saw %s, wanted %s; %s"
        .formatted(rule.severity().word(), rule.id(), path, seen, wanted, suggestion);
  }
}
