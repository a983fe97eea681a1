package org.isopter.task.check;

import java.util.List;
import org.isopter.model.value.Result;
import org.isopter.profiles.ProfileValidator;
import org.isopter.profiles.ValidationMessage;
import org.isopter.task.convert.Bundles;
import org.isopter.task.input.InputDocument;
import org.isopter.task.report.Issue;
import org.isopter.task.report.RunLog;

/** Validates documents against the profiles and notes what the validator says. */
public final class Validation {

  private final RunLog journal;
  private final ProfileValidator validator = new ProfileValidator();

  public Validation(RunLog journal) {
    this.journal = journal;
  }

  public void validate(InputDocument item) {
    Result<String> json = Bundles.json(item);
    if (json instanceof Result.Ok<String> ok) {
      note(item, validator.validate(ok.value()).stream().map(said -> issue(item, said)).toList());
    } else {
      journal.refuseFor(item.position(), json.faults());
    }
  }

  private void note(InputDocument item, List<Issue> issues) {
    if (issues.stream().anyMatch(Issue::isError)) {
      journal.refuse(item.position(), issues);
    } else {
      journal.accept(item.position(), issues);
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
