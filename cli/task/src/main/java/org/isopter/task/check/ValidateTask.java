package org.isopter.task.check;

import java.util.List;
import java.util.function.Function;
import org.isopter.model.value.Result;
import org.isopter.profiles.ProfileValidator;
import org.isopter.profiles.QuickValidator;
import org.isopter.profiles.ValidationMessage;
import org.isopter.task.convert.Bundles;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.InputDocuments;
import org.isopter.task.input.Inputs;
import org.isopter.task.report.Issue;
import org.isopter.task.report.RunLog;

/**
 * Validates FHIR R4 against the profiles that it claims, without a network. The log gets the
 * validator's messages; its errors refuse a resource.
 */
public final class ValidateTask {

  private final RunLog log;
  private final Function<String, List<ValidationMessage>> validator;

  /**
   * Makes a task that asks the reference validator only where the checks that are compiled from the
   * profiles do not decide.
   */
  public ValidateTask(RunLog log) {
    this(log, QuickValidator.standard()::validate);
  }

  private ValidateTask(RunLog log, Function<String, List<ValidationMessage>> validator) {
    this.log = log;
    this.validator = validator;
  }

  /** Returns a task that asks the reference validator about every resource. */
  public static ValidateTask byReference(RunLog log) {
    return new ValidateTask(log, ProfileValidator.standard()::validate);
  }

  /** Validates every resource and bundle. */
  public void run(Inputs inputs) {
    new InputDocuments(log).each(inputs.find(log), this::validate);
    log.sum("resource");
  }

  private void validate(InputDocument item) {
    Result<String> json = Bundles.json(item);
    if (json instanceof Result.Ok<String> ok) {
      log.judge(
          item.position(),
          validator.apply(ok.value()).stream().map(said -> issue(item, said)).toList());
    } else {
      log.refuseFor(item.position(), json.faults());
    }
  }

  private static Issue issue(InputDocument item, ValidationMessage said) {
    return new Issue(
        Issue.Severity.valueOf(said.severity().name()),
        said.isError() ? "invalid" : "informational",
        item.position(),
        said.path(),
        List.of(new Issue.Said("", said.text())));
  }
}
