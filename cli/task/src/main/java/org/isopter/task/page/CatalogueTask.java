package org.isopter.task.page;

import org.isopter.model.catalogue.Catalogue;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.RunLog;
import org.jspecify.annotations.Nullable;

/** Shows the findings, or the rules by which FHIR of other systems is read. */
public final class CatalogueTask {

  private final RunLog log;
  private final PageForm form;

  public CatalogueTask(RunLog log, PageForm form) {
    this.log = log;
    this.form = form;
  }

  /**
   * Shows findings or rules.
   *
   * @param foreign whether rules for other systems are wanted, and not findings
   * @param name the id of the only one wanted; null for all. An unknown id raises the status to
   *     {@link ExitStatus#USAGE}
   */
  public void show(boolean foreign, @Nullable String name) {
    if (foreign) {
      rules(name);
    } else {
      findings(name);
    }
  }

  /**
   * Shows findings.
   *
   * @param name the id of the only one wanted; null for all. An unknown id raises the status to
   *     {@link ExitStatus#USAGE}
   */
  public void findings(@Nullable String name) {
    Catalogue catalogue = Catalogue.standard();
    FindingChoice.of(catalogue, name)
        .ifPresentOrElse(
            chosen -> log.data().print(form.page(chosen)),
            () -> unknown(FindingChoice.unknown(catalogue, name)));
  }

  /**
   * Shows the rules for other systems.
   *
   * @param name as for findings
   */
  public void rules(@Nullable String name) {
    RulePages.of(name)
        .ifPresentOrElse(
            chosen -> log.data().print(RulePages.page(chosen, form)),
            () -> unknown(RulePages.unknown(name)));
  }

  private void unknown(String message) {
    log.say(message);
    log.raise(ExitStatus.USAGE);
  }
}
