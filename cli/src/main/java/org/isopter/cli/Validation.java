package org.isopter.cli;

import java.util.List;
import org.isopter.model.value.Result;
import org.isopter.profiles.ProfileValidator;
import org.isopter.profiles.ValidationMessage;

/** Validates documents against the profiles and notes what the validator says. */
final class Validation {

  private final Journal journal;
  private final ProfileValidator validator = new ProfileValidator();

  Validation(Journal journal) {
    this.journal = journal;
  }

  void validate(Item item) {
    Result<String> json = Bundles.json(item);
    if (json instanceof Result.Ok<String> ok) {
      note(item, validator.validate(ok.value()).stream().map(said -> issue(item, said)).toList());
    } else {
      journal.refuseFor(item.position(), json.faults());
    }
  }

  private void note(Item item, List<Issue> issues) {
    if (issues.stream().anyMatch(Issue::isError)) {
      journal.refuse(item.position(), issues);
    } else {
      journal.accept(item.position(), issues);
    }
  }

  private static Issue issue(Item item, ValidationMessage said) {
    return new Issue(
        Issue.Severity.valueOf(said.severity().name()),
        said.isError() ? "invalid" : "informational",
        item.position(),
        said.path(),
        List.of(new Issue.Said("", said.text())));
  }
}
