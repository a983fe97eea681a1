package org.isopter.task.exchange;

import java.io.IOException;
import org.isopter.mapper.exchange.Fetched;
import org.isopter.mapper.exchange.Fetcher;
import org.isopter.mapper.http.ServerException;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.task.io.Messages;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;

/**
 * Fetches what a FHIR server answers to requests, as lines that from-fhir reads. A file appears
 * only when all was fetched.
 */
public final class FetchTask {

  private final RunLog log;
  private final FetchRequest request;

  public FetchTask(RunLog log, FetchRequest request) {
    this.log = log;
    this.request = request;
  }

  /**
   * Fetches all that is asked for, or nothing.
   *
   * @throws UsageException when the options do not fit each other
   * @throws UnwritableException when the output cannot be written
   */
  public void run() {
    try (FetchedFiles files = FetchedFiles.of(request.output(), log.data())) {
      Fetcher fetcher = new Fetcher(request.access().client(), files);
      int answers = 0;
      long resources = 0;
      long deleted = 0;
      long troubles = 0;
      for (String one : request.requests()) {
        Fetched fetched = fetcher.fetch(one);
        answers += fetched.answers();
        resources += fetched.resources();
        deleted += fetched.deleted();
        troubles += fetched.troubles();
      }
      files.commit();
      sum(new Fetched(answers, resources, deleted, troubles));
    } catch (ServerException refused) {
      ServerFaults.stop(log, refused);
    } catch (IOException failed) {
      throw new UnwritableException("what was fetched", failed);
    }
  }

  private void sum(Fetched all) {
    String where = request.output().map(file -> " written to " + file).orElse("");
    log.say(
        Messages.count(all.resources(), "resource")
            + " in "
            + Messages.count(all.answers(), "answer")
            + where);
    if (all.deleted() > 0) {
      String list = request.output().map(file -> ": " + FetchedFiles.deleted(file)).orElse("");
      log.say(Messages.count(all.deleted(), "resource") + " deleted on the server" + list);
    }
    if (all.troubles() > 0) {
      log.raise(ExitStatus.LEFT_OVER);
      String list = request.output().map(file -> ": " + FetchedFiles.troubles(file)).orElse("");
      log.say(
          "the server could not give everything, and says so "
              + Messages.count(all.troubles(), "time")
              + list);
    }
  }
}
