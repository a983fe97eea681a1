package org.isopter.mapper.foreign.run;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.document.DocumentSources;
import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.io.Inflated;
import org.isopter.mapper.io.Lines;
import org.isopter.mapper.json.Raw;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * Takes documents and lines in, puts together what belongs together, and hands on what was read.
 *
 * <p>What need not wait for others is read at once, lines in blocks; the rest when the end is
 * announced. Nothing that cannot be read stops the rest.
 */
public final class Intake {

  /** Lines in a block, unless another number is set. */
  public static final int USUAL_BLOCK = 2_000;

  /** Bytes after which a block ends, whatever its number of lines: memory stays bounded. */
  private static final long LARGEST_BLOCK = 16_000_000;

  private final ForeignReader reader;
  private final DocumentSources sources;
  private final Release release;
  private final Together together;
  private final Receiver receiver;
  private final int block;
  private final List<Parsed> waiting = new ArrayList<>();

  private Intake(
      ForeignReader reader, Release release, Together together, Receiver receiver, int block) {
    this.reader = reader;
    this.sources = reader.sources();
    this.release = release;
    this.together = together;
    this.receiver = receiver;
    this.block = block;
  }

  /** Makes an intake of documents of a release with the usual block. */
  public static Intake of(
      ForeignReader reader, Release release, Together together, Receiver receiver) {
    return new Intake(reader, release, together, receiver, USUAL_BLOCK);
  }

  /**
   * Returns this intake with another number of lines in a block.
   *
   * @throws IllegalArgumentException when the size is not above zero
   */
  public Intake block(int lines) {
    if (lines < 1) {
      throw new IllegalArgumentException("a block needs a line");
    }
    return new Intake(reader, release, together, receiver, lines);
  }

  Receiver receiver() {
    return receiver;
  }

  /** Returns this intake handing on to another. */
  Intake to(Receiver other) {
    return new Intake(reader, release, together, other, block);
  }

  /**
   * Takes a whole file, without what the list beside it says was deleted.
   *
   * @throws IOException when that list cannot be read
   */
  public void document(Origin origin, byte[] bytes) throws IOException {
    Deletions deletions = Deletions.beside(origin.name());
    Result<DocumentSources.Source> parsed = parse(bytes);
    if (parsed instanceof Result.Ok<DocumentSources.Source> ok) {
      left(origin, ok.value(), deletions).ifPresent(this::take);
    } else {
      receiver.refused(origin, parsed.faults());
    }
  }

  private Optional<Parsed> left(Origin origin, DocumentSources.Source source, Deletions deletions) {
    return deletions
        .without(source.json(), name -> receiver.deleted(origin, name))
        .map(json -> new Parsed(origin, new DocumentSources.Source(json, source.lost())));
  }

  /**
   * Takes every line of a stream, compressed or not, without what the list beside it says was
   * deleted.
   *
   * @return how many lines held anything
   * @throws IOException when the input cannot be read
   */
  public long lines(Origin file, InputStream in) throws IOException {
    long filled = 0;
    Deletions deletions = Deletions.beside(file.name());
    try (Lines lines = new Lines(Inflated.whereCompressed(in), longest())) {
      List<Lines.Line> next = next(lines);
      while (!next.isEmpty()) {
        filled += next.stream().filter(line -> !line.isBlank()).count();
        block(file, next, deletions);
        next = next(lines);
      }
    }
    return filled;
  }

  /** Reads what waited for others. */
  public void finish() {
    read(waiting);
    waiting.clear();
  }

  /** Takes a block of lines and reads it, unless everything is read together. */
  void block(Origin file, List<Lines.Line> lines, Deletions deletions) {
    List<Lines.Line> filled = lines.stream().filter(line -> !line.isBlank()).toList();
    List<Result<DocumentSources.Source>> parsed = filled.parallelStream().map(this::parse).toList();
    List<Parsed> documents = new ArrayList<>();
    for (int i = 0; i < parsed.size(); i++) {
      // Lines belong together by their block: their folder holds other files.
      Origin origin = new Origin(file.name(), filled.get(i).number(), "");
      if (parsed.get(i) instanceof Result.Ok<DocumentSources.Source> ok) {
        left(origin, ok.value(), deletions).ifPresent(documents::add);
      } else {
        receiver.refused(origin, parsed.get(i).faults());
      }
    }
    if (together == Together.ALL) {
      waiting.addAll(documents);
    } else {
      read(documents);
    }
  }

  /** Returns the next block of lines; empty at the end. */
  List<Lines.Line> next(Lines lines) throws IOException {
    List<Lines.Line> next = new ArrayList<>();
    long bytes = 0;
    while (next.size() < block && bytes < LARGEST_BLOCK) {
      Optional<Lines.Line> line = lines.next();
      if (line.isEmpty()) {
        return next;
      }
      next.add(line.get());
      bytes += line.get().bytes().length;
    }
    return next;
  }

  long longest() {
    return Math.min(reader.limits().documentLength(), Integer.MAX_VALUE - 8);
  }

  private void take(Parsed document) {
    if (together.alone(document)) {
      read(List.of(document));
    } else {
      waiting.add(document);
    }
  }

  private void read(List<Parsed> documents) {
    List<List<Parsed>> groups = together.groups(documents);
    boolean one = groups.size() == 1;
    (one ? groups.stream() : groups.parallelStream())
        .map(this::attempt)
        .toList()
        .forEach(this::handOn);
  }

  /** What came of a group: a batch, or the mistake in the program that stood in its way. */
  private record Attempt(
      List<Parsed> group, Optional<Batch> batch, Optional<RuntimeException> by) {}

  private Attempt attempt(List<Parsed> group) {
    try {
      Reading reading = reader.readAll(group.stream().map(Parsed::source).toList());
      Batch batch = new Batch(group.stream().map(Parsed::origin).toList(), reading);
      return new Attempt(group, Optional.of(batch), Optional.empty());
    } catch (RuntimeException mistake) {
      return new Attempt(group, Optional.empty(), Optional.of(mistake));
    }
  }

  /** Where a group fails, each of its documents is read by itself: one never stops the rest. */
  private void handOn(Attempt attempt) {
    if (attempt.batch().isPresent()) {
      receiver.read(attempt.batch().get());
    } else if (attempt.group().size() > 1) {
      attempt.group().forEach(each -> handOn(attempt(List.of(each))));
    } else {
      receiver.failed(attempt.group().get(0).origin(), attempt.by().orElseThrow());
    }
  }

  private Result<DocumentSources.Source> parse(Lines.Line line) {
    if (line.tooLong()) {
      return Result.refused(
          new Fault(
              "",
              "more than " + longest() + " bytes",
              "a line within the limits",
              "raise the limit"));
    }
    return parse(line.bytes());
  }

  private Result<DocumentSources.Source> parse(byte[] bytes) {
    return sources.read(bytes, release).flatMap(Intake::resource);
  }

  /** A document of another kind is no input: to keep it would make a mistake look like a record. */
  private static Result<DocumentSources.Source> resource(DocumentSources.Source source) {
    if (source.json() instanceof Raw.Arr) {
      return Result.refused(
          new Fault(
              "",
              "a list",
              "one FHIR resource",
              "put the resources in a Bundle, or each on a line of its own (NDJSON)"));
    }
    return Neighbours.type(source.json()).isEmpty()
        ? Result.refused(
            Fault.of("resource.resourceType", "nothing", "the name of a FHIR resource type"))
        : Result.ok(source);
  }
}
