package org.isopter.cli;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.model.value.Result;

/** Turns every document into a text and puts it out; what cannot be turned is told of. */
final class Conversion {

  private final Journal journal;
  private final Function<Item, Result<String>> step;

  Conversion(Journal journal, Function<Item, Result<String>> step) {
    this.journal = journal;
    this.step = step;
  }

  void run(List<Source> sources, Output output) {
    try (output) {
      new Items(journal).each(sources, item -> one(item, output));
      output.commit();
    }
  }

  private void one(Item item, Output output) {
    Result<String> text = step.apply(item);
    if (text instanceof Result.Ok<String> ok) {
      Optional<Issue> obstacle = output.put(item, ok.value());
      obstacle.ifPresentOrElse(
          issue -> journal.refuse(item, List.of(issue)), () -> journal.accept(item, List.of()));
    } else {
      journal.refuseFor(item, text.faults());
    }
  }
}
