package org.isopter.cli;

import java.util.List;

/** Takes what there is to tell about one document. */
interface IssueSink {

  /** Takes the issues of one document; none when it is as it should be. */
  void put(Position document, List<Issue> issues);

  /** Ends what is told, where it needs an end. */
  default void finish() {}
}
