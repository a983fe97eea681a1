package org.isopter.task.report;

import java.util.List;

/** Takes what there is to tell about one document. */
public interface IssueSink {

  /** Takes nothing. */
  IssueSink NOBODY = (document, issues) -> {};

  /** Takes the issues of one document; none when it is as it should be. */
  void put(Position document, List<Issue> issues);

  /** Takes what is reported of a document as an OperationOutcome that is already written. */
  default void outcome(String line) {}

  /** Ends what is reported, where it needs an end. */
  default void finish() {}
}
