package org.isopter.mapper.exchange;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.Closeable;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.net.URI;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.io.OwnerFile;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Result;

/**
 * The file in which a sender keeps what a server has stored: a line for each part of a transaction,
 * on the disk before the next is sent. After a run that was killed, what it says is stored is not
 * sent again, and what it does not say is. It names places on the server and digests, no person and
 * no finding.
 */
public final class Journal implements Closeable {

  private final Path file;
  private final Optional<RandomAccessFile> lines;
  private final Map<String, Long> parts = new HashMap<>();
  private final Set<String> done = new HashSet<>();
  private final Map<String, Long> latest = new HashMap<>();
  private final Map<String, String> latestDigest = new HashMap<>();

  private Journal(Path file, Optional<RandomAccessFile> lines) {
    this.file = file;
    this.lines = lines;
  }

  /** Returns a journal of nothing, that keeps nothing. */
  public static Journal none() {
    return new Journal(Path.of(""), Optional.empty());
  }

  /**
   * Opens a journal, or begins it; its owner alone can read it.
   *
   * @param server the server that it is about
   * @throws FaultException when it is of another server, in use, or no journal
   * @throws UnwritableException when it cannot be read or written
   */
  public static Journal open(Path file, URI server) {
    try {
      boolean fresh = !Files.exists(file);
      if (fresh) {
        create(file);
      }
      RandomAccessFile lines = new RandomAccessFile(file.toFile(), "rw");
      try {
        return opened(new Journal(file, Optional.of(lines)), server);
      } catch (IOException | RuntimeException failed) {
        lines.close();
        throw failed;
      }
    } catch (IOException failed) {
      throw new UnwritableException(file.toString(), failed);
    }
  }

  private static Journal opened(Journal journal, URI server) throws IOException {
    RandomAccessFile lines = journal.lines.orElseThrow();
    journal.lock(lines);
    if (lines.length() == 0) {
      journal.append(new Raw.Obj(Map.of("server", Raw.of(server.toString()))));
    } else {
      journal.load(lines, server);
    }
    return journal;
  }

  private static void create(Path file) throws IOException {
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null) {
      Files.createDirectories(folder);
    }
    OwnerFile.create(file);
  }

  private void lock(RandomAccessFile open) throws IOException {
    try {
      FileLock lock = open.getChannel().tryLock();
      if (lock != null) {
        return;
      }
    } catch (OverlappingFileLockException taken) {
      throw inUse();
    }
    throw inUse();
  }

  private FaultException inUse() {
    return new FaultException(
        Fault.of(file.toString(), "a journal that another run is using", "one run at a time"));
  }

  /** A run that was killed may have left half a line, which says nothing. */
  private void load(RandomAccessFile open, URI server) throws IOException {
    long at = 0;
    Optional<Raw> line = line(open, at);
    String of = line.flatMap(raw -> raw.string("server")).orElse("");
    if (!of.equals(server.toString())) {
      throw new FaultException(
          new Fault(
              file.toString(),
              of.isEmpty() ? "no journal" : "the journal of another server",
              "that of " + server,
              "name another file with --journal"));
    }
    long whole = open.getFilePointer();
    for (at = whole; at < open.length(); at = whole) {
      line = line(open, at);
      if (line.isEmpty()) {
        break;
      }
      take(line.get(), at);
      whole = open.getFilePointer();
    }
    open.setLength(whole);
  }

  private void take(Raw line, long at) {
    line.string("part").ifPresent(digest -> parts.put(digest, at));
    line.string("sent")
        .ifPresent(
            digest -> {
              done.add(digest);
              String name = line.string("name").orElse("");
              latest.put(name, at);
              latestDigest.put(name, digest);
            });
  }

  /** Returns the line at a place; empty for one that has no end or is none of ours. */
  private static Optional<Raw> line(RandomAccessFile open, long at) throws IOException {
    open.seek(at);
    Optional<String> text = Optional.ofNullable(open.readLine());
    open.seek(Math.max(0, open.getFilePointer() - 1));
    boolean ended = open.read() == '\n';
    return text.filter(any -> ended)
        .flatMap(
            json ->
                RawJson.OWN.read(json) instanceof Result.Ok<Raw> ok
                    ? Optional.of(ok.value())
                    : Optional.empty());
  }

  /** Says whether all of a transaction is stored. */
  boolean isSent(String transaction) {
    return done.contains(transaction);
  }

  /** Says whether a transaction that was stored has been replaced by a later version of it. */
  boolean isReplaced(String transaction, String name) {
    return done.contains(transaction) && !transaction.equals(latestDigest.get(name));
  }

  /** Returns what became of a part; empty where it is not known to be stored. */
  Optional<List<StoredEntry>> part(String digest) {
    return Optional.ofNullable(parts.get(digest)).flatMap(this::read).map(Journal::entries);
  }

  /** Returns what was stored of the last version of a transaction, by what it is stored under. */
  Map<String, StoredEntry> latest(String name) {
    Map<String, StoredEntry> all = new HashMap<>();
    Optional.ofNullable(latest.get(name)).flatMap(this::read).stream()
        .flatMap(line -> line.list("parts").stream())
        .flatMap(part -> part.string().flatMap(this::part).stream())
        .flatMap(List::stream)
        .forEach(entry -> all.put(entry.name(), entry));
    return all;
  }

  private static List<StoredEntry> entries(Raw line) {
    return line.objects("entries").stream().map(StoredEntry::of).toList();
  }

  private Optional<Raw> read(long at) {
    try {
      return line(lines.orElseThrow(), at);
    } catch (IOException failed) {
      throw new UnwritableException(file.toString(), failed);
    }
  }

  /** Keeps what became of a part. */
  void put(String part, List<StoredEntry> entries) {
    Map<String, Raw> line = new LinkedHashMap<>();
    line.put("part", Raw.of(part));
    line.put("entries", Raw.of(entries.stream().map(StoredEntry::line).toList()));
    append(new Raw.Obj(line));
  }

  /** Keeps that all parts of a transaction are stored. */
  void end(String transaction, String name, List<String> digests) {
    Map<String, Raw> line = new LinkedHashMap<>();
    line.put("sent", Raw.of(transaction));
    line.put("name", Raw.of(name));
    line.put("parts", Raw.of(new ArrayList<>(digests.stream().map(Raw::of).toList())));
    append(new Raw.Obj(line));
  }

  private void append(Raw.Obj line) {
    if (lines.isEmpty()) {
      return;
    }
    try {
      RandomAccessFile open = lines.get();
      long at = open.length();
      open.seek(at);
      open.write((RawJson.write(line) + "\n").getBytes(UTF_8));
      open.getChannel().force(false);
      take(line, at);
    } catch (IOException failed) {
      throw new UnwritableException(file.toString(), failed);
    }
  }

  @Override
  public void close() throws IOException {
    if (lines.isPresent()) {
      lines.get().close();
    }
  }
}
