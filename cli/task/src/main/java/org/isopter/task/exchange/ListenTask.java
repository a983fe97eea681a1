package org.isopter.task.exchange;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.mapper.mllp.ListenerEvents;
import org.isopter.mapper.mllp.ListenerOptions;
import org.isopter.mapper.mllp.MessageFolder;
import org.isopter.mapper.mllp.MessageListener;
import org.isopter.task.io.Messages;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;

/**
 * Receives messages with results over the network into a folder, which from-fhir reads. The file of
 * each message goes to the data of the log.
 */
public final class ListenTask implements Closeable {

  private final RunLog log;
  private final ListenRequest request;
  private final CountDownLatch enough = new CountDownLatch(1);
  private final CountDownLatch ended = new CountDownLatch(1);
  private int kept;
  private int again;
  private int refused;

  public ListenTask(RunLog log, ListenRequest request) {
    this.log = log;
    this.request = request;
  }

  /**
   * Receives until the messages that are asked for have come, this task is closed, or the process
   * is asked to end.
   *
   * @throws UsageException when what is asked for does not fit, or nobody can listen there
   * @throws UnwritableException when the folder cannot be written
   */
  public void run() {
    ListenerOptions options = ListenAccess.of(request, System.getenv());
    Thread asked = new Thread(this::end, "listen-end");
    try (MessageFolder folder = folder()) {
      Runtime.getRuntime().addShutdownHook(asked);
      receive(options, folder).await();
      sum();
    } catch (IOException failed) {
      throw new UnwritableException(request.folder().toString(), failed);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    } finally {
      ended.countDown();
      forget(asked);
    }
  }

  /** Returns the listener once it is closed. */
  private MessageListener receive(ListenerOptions options, MessageFolder folder)
      throws InterruptedException {
    try (MessageListener listener = start(options, folder)) {
      say("listening at " + request.address() + ":" + listener.port());
      enough.await();
      return listener;
    }
  }

  private MessageFolder folder() throws IOException {
    return MessageFolder.at(request.folder());
  }

  private MessageListener start(ListenerOptions options, MessageFolder folder) {
    try {
      return MessageListener.start(options, folder, new Events());
    } catch (IOException taken) {
      throw new UsageException(
          "nobody can listen at " + request.address() + ":" + request.port() + ", or someone does");
    }
  }

  /** Says whether the hook is gone; where the process ends already, the hook ended this run. */
  private static boolean forget(Thread hook) {
    try {
      return Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException ending) {
      return false;
    }
  }

  /** Asks the run to end; what is being received is answered first. */
  @Override
  public void close() {
    enough.countDown();
  }

  private void end() {
    close();
    try {
      ended.await();
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    }
  }

  private void say(String words) {
    log.say(words);
    log.streams().flush();
  }

  private void sum() {
    say(
        Messages.count(kept, "message")
            + " received into "
            + request.folder()
            + (again == 0 ? "" : ", " + again + " of them again")
            + (refused == 0 ? "" : "; " + Messages.count(refused, "refusal")));
  }

  private final class Events implements ListenerEvents {

    @Override
    public void kept(Path file, boolean before) {
      kept++;
      again += before ? 1 : 0;
      log.data().println(file);
      log.streams().flush();
      if (kept == request.stopAfter()) {
        enough.countDown();
      }
    }

    @Override
    public void refused(String sender, String why) {
      refused++;
      say(sender + ": not taken: " + why);
    }
  }
}
