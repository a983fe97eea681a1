package org.isopter.task.exchange;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import org.isopter.mapper.exchange.Journal;
import org.isopter.mapper.exchange.Sender;
import org.isopter.mapper.http.ServerException;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Result;
import org.isopter.task.convert.Bundles;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.InputDocuments;
import org.isopter.task.input.InputSource;
import org.isopter.task.input.Inputs;
import org.isopter.task.io.Messages;
import org.isopter.task.report.Progress;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;

/**
 * Sends transactions to a FHIR server. What the journal says is stored is not sent again, so that a
 * run that was stopped is simply run again.
 */
public final class SendTask {

  private final RunLog log;
  private final SendRequest request;
  private int sent;
  private int before;
  private long entries;
  private long created;
  private int untried;
  private boolean stopped;

  public SendTask(RunLog log, SendRequest request) {
    this.log = log;
    this.request = request;
  }

  /**
   * Sends every bundle of the inputs; what is not taken is in the log.
   *
   * @throws UsageException when the options do not fit each other, or the journal is of another
   *     server
   * @throws UnwritableException when the journal cannot be written
   */
  public void run(Inputs inputs) {
    if (request.journal().isEmpty() && !request.dry()) {
      throw new UsageException("--journal names the file of what is sent; or give --dry-run");
    }
    List<InputSource> sources = inputs.find(log);
    Inputs.refuseToOverwrite(sources, "--journal", request.journal().orElse(null));
    try (Journal journal = journal()) {
      Sender sender = new Sender(request.access().client(), journal, request.plan());
      if (request.dry()) {
        each(sources, item -> show(sender, item));
        log.say("nothing was sent");
      } else {
        send(sources, sender);
      }
    } catch (ServerException refused) {
      ServerFaults.stop(log, refused);
    } catch (FaultException refused) {
      throw new UsageException(String.valueOf(refused.getMessage()));
    } catch (IOException failed) {
      throw new UnwritableException(request.journal().map(Path::toString).orElse(""), failed);
    }
  }

  private Journal journal() {
    Optional<Path> file = request.journal().filter(path -> !request.dry() || Files.exists(path));
    return file.map(path -> Journal.open(path, request.access().address().base()))
        .orElseGet(Journal::none);
  }

  private void each(List<InputSource> sources, Consumer<InputDocument> use) {
    new InputDocuments(log).each(sources, use);
  }

  private void send(List<InputSource> sources, Sender sender) {
    try (Progress progress = Progress.on(log.streams(), "transactions")) {
      each(
          sources,
          item -> {
            send(sender, item);
            progress.at(sent + before);
          });
    }
    String again = before == 0 ? "" : ", " + before + " were stored before";
    String refused = log.refused() == 0 ? "" : ", " + log.refused() + " refused";
    String rest = untried == 0 ? "" : ", " + untried + " not tried";
    log.say(
        "%s sent with %s, %d of them new to the server%s%s%s"
            .formatted(
                Messages.count(sent, "transaction"),
                entries == 1 ? "1 entry" : entries + " entries",
                created,
                again,
                refused,
                rest));
  }

  private void send(Sender sender, InputDocument item) {
    if (stopped) {
      untried++;
      return;
    }
    try {
      Result<Sender.Sent> result =
          Bundles.json(item).flatMap(json -> sender.send(json.getBytes(UTF_8)));
      if (result instanceof Result.Ok<Sender.Sent> ok) {
        count(ok.value());
        log.accept(item.position());
      } else {
        log.refuseFor(item.position(), result.faults());
      }
    } catch (ServerException refused) {
      stopped = true;
      untried++;
      ServerFaults.stop(log, refused);
    }
  }

  private void count(Sender.Sent one) {
    if (one.before()) {
      before++;
    } else {
      sent++;
      entries += one.entries();
      created += one.created();
    }
  }

  private void show(Sender sender, InputDocument item) {
    Result<List<Sender.Part>> parts =
        Bundles.json(item).flatMap(json -> sender.parts(json.getBytes(UTF_8)));
    if (!parts.isOk()) {
      log.refuseFor(item.position(), parts.faults());
      return;
    }
    String name = Messages.visible(item.position().toString());
    if (parts.orThrow().isEmpty()) {
      log.data().println(name + ": stored before");
    }
    parts.orThrow().forEach(part -> show(name, part));
    log.accept(item.position());
  }

  private void show(String name, Sender.Part part) {
    String token = request.access().token().isNone() ? "" : ", with a token that is not shown";
    log.data()
        .println(
            String.format(
                Locale.ROOT,
                "%s: POST %s, %,d bytes%s",
                name,
                request.access().address().base(),
                part.size(),
                token));
    part.entries().forEach(entry -> log.data().println("  " + Messages.visible(entry)));
  }
}
