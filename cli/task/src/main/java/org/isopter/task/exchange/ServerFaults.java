package org.isopter.task.exchange;

import java.util.List;
import org.isopter.mapper.http.ServerException;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.Issue;
import org.isopter.task.report.Position;
import org.isopter.task.report.RunLog;

/** Says what a server did not do. */
final class ServerFaults {

  private ServerFaults() {}

  /** Notes why a run stopped. */
  static void stop(RunLog log, ServerException refused) {
    log.raise(refused.isOfAll() ? ExitStatus.INTERNAL : ExitStatus.REFUSED);
    Position where = new Position(refused.fault().path(), 0, 0);
    log.warn(where, List.of(Issue.of(where, refused.fault().at(""))));
  }
}
