package org.isopter.mapper.exchange;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import org.isopter.mapper.http.ServerClient;
import org.isopter.mapper.http.ServerReply;
import org.isopter.mapper.http.ServerRequest;
import org.isopter.mapper.io.Lines;
import org.isopter.mapper.io.Passing;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;

/**
 * A bulk data export (HL7 FHIR Bulk Data Access 2.0.0): asked for, waited for, and fetched file by
 * file. Each file is fetched whole before a line of it is handed on, since it is asked for again
 * where it was cut off.
 */
final class BulkExport {

  private static final int ACCEPTED = 202;
  private static final Duration POLL = Duration.ofSeconds(2);

  /** Whoever is asked sooner than this asks for nothing sensible. */
  private static final Duration SOONEST = Duration.ofMillis(500);

  private final ServerClient client;
  private final FetchedLines lines;

  BulkExport(ServerClient client, FetchedLines lines) {
    this.client = client;
    this.lines = lines;
  }

  Fetched fetch(URI uri) {
    ServerRequest start =
        ServerRequest.get(uri, ServerRequest.FHIR).with("Prefer", "respond-async");
    URI status = client.send(start, this::place);
    try {
      return files(finished(status), status);
    } finally {
      // The server may let go of the files; where it does not hear of that, it does so in time.
      client.sendOnce(new ServerRequest("DELETE", status, Map.of(), Optional.empty()));
    }
  }

  private URI place(ServerReply reply) throws IOException {
    Optional<String> place = reply.headers().firstValue("Content-Location");
    if (reply.status() != ACCEPTED) {
      throw Fetcher.refusal(reply.uri(), reply.status(), client.said(reply.text()));
    }
    return place
        .map(link -> client.address().link(link, reply.uri()))
        .orElseThrow(
            () ->
                Fetcher.refused(reply.uri(), "no Content-Location", "where to ask for the export"));
  }

  /** What the server says of an export: how long to wait, or what there is. */
  private record Answer(Optional<Raw> manifest, Duration pause) {}

  private Raw finished(URI status) {
    ServerRequest ask = ServerRequest.get(status, "application/json");
    Answer answer = client.send(ask, this::answer);
    while (answer.manifest().isEmpty()) {
      client.waitBefore(answer.pause(), ask);
      answer = client.send(ask, this::answer);
    }
    return answer.manifest().get();
  }

  private Answer answer(ServerReply reply) throws IOException {
    if (reply.status() == ACCEPTED) {
      return new Answer(
          Optional.empty(),
          reply.retryAfter().filter(asked -> asked.compareTo(SOONEST) > 0).orElse(POLL));
    }
    if (!reply.isGood()) {
      throw Fetcher.refusal(reply.uri(), reply.status(), client.said(reply.text()));
    }
    return new Answer(Optional.of(Fetcher.document(reply.bytes())), Duration.ZERO);
  }

  private Fetched files(Raw manifest, URI status) {
    boolean token = manifest.get("requiresAccessToken").filter(BulkExport::isTrue).isPresent();
    long resources = files(manifest, "output", status, token, lines::line);
    AtomicLong deleted = new AtomicLong();
    files(
        manifest,
        "deleted",
        status,
        token,
        json -> {
          deleted.addAndGet(deletions(json));
          lines.deleted(json);
        });
    long troubles = files(manifest, "error", status, token, lines::trouble);
    return new Fetched(manifest.list("output").size(), resources, deleted.get(), troubles);
  }

  private static int deletions(byte[] bundle) {
    return RawJson.OWN.read(bundle).map(raw -> raw.objects("entry").size()).orThrow();
  }

  private static boolean isTrue(Raw value) {
    return value instanceof Raw.Leaf leaf && leaf.text().equals("true");
  }

  private long files(Raw manifest, String kind, URI status, boolean token, Consumer<byte[]> use) {
    long all = 0;
    for (Raw.Obj file : manifest.objects(kind)) {
      URI uri = client.address().link(file.string("url").orElse(""), status);
      if (token && !client.address().isOwn(uri)) {
        throw Fetcher.refused(
            uri, "a file on another host that wants the token", "one on the server itself");
      }
      all += file(uri, count(file), use);
    }
    return all;
  }

  private static Optional<Long> count(Raw.Obj file) {
    return file.get("count")
        .filter(raw -> raw instanceof Raw.Leaf leaf && leaf.text().matches("\\d{1,15}"))
        .map(raw -> Long.valueOf(((Raw.Leaf) raw).text()));
  }

  private long file(URI uri, Optional<Long> count, Consumer<byte[]> use) {
    try {
      Path aside = Passing.add(Files.createTempFile("isopter", ".ndjson"));
      try {
        long found =
            client.send(
                ServerRequest.get(uri, ServerRequest.LINES),
                reply -> download(reply, count, aside));
        each(aside, use);
        return found;
      } finally {
        Passing.delete(aside);
      }
    } catch (IOException failed) {
      throw new UnwritableException("a temporary file", failed);
    }
  }

  private long download(ServerReply reply, Optional<Long> count, Path aside) throws IOException {
    if (!reply.isGood()) {
      throw Fetcher.refusal(reply.uri(), reply.status(), client.said(reply.text()));
    }
    long found = 0;
    Lines all = new Lines(reply.body(), ServerReply.MOST);
    try (OutputStream out = Files.newOutputStream(aside)) {
      Optional<Lines.Line> line = all.next();
      while (line.isPresent()) {
        if (!line.get().isBlank()) {
          found++;
          FetchedLines.write(checked(line.get(), reply.uri()), out);
        }
        line = all.next();
      }
    }
    if (count.isPresent() && count.get() != found) {
      throw new IOException(found + " lines, where " + count.get() + " are announced");
    }
    return found;
  }

  private static byte[] checked(Lines.Line line, URI uri) throws IOException {
    if (line.tooLong()) {
      throw Fetcher.refused(uri, "more than 64 MB on one line", "a resource a line");
    }
    Fetcher.document(line.bytes());
    return line.bytes();
  }

  private static void each(Path file, Consumer<byte[]> use) throws IOException {
    try (InputStream in = new BufferedInputStream(Files.newInputStream(file));
        Lines all = new Lines(in, ServerReply.MOST)) {
      for (Optional<Lines.Line> line = all.next(); line.isPresent(); line = all.next()) {
        use.accept(line.get().bytes());
      }
    }
  }
}
