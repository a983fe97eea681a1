package org.isopter.mapper.foreign;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Result;

/**
 * Reads a file of one resource per line in constant memory and writes one bundle per examination
 * and line.
 *
 * <p>Lines are read together in blocks: what one refers to, and what belongs to one visit, is found
 * within a block. Blocks are written in the order of the file, within a block the examinations in
 * the order of their first lines, then one bundle of what was kept without an examination. A line
 * that cannot be read is reported and never stops the rest.
 *
 * <p>The output grows in a file beside it and is renamed at the end; a checkpoint tells how far it
 * has come, so that a run that was killed can go on without loss or duplicate.
 */
public final class NdjsonRun {

  /** Lines in a block, unless another number is set. */
  public static final int USUAL_BLOCK = 10_000;

  private final ForeignReader reader;
  private final Policy policy;
  private final Limits limits;
  private final int block;
  private final LongConsumer progress;
  private final ForeignWriter writer = ForeignWriter.of(BundleKind.COLLECTION);

  private NdjsonRun(
      ForeignReader reader, Policy policy, Limits limits, int block, LongConsumer progress) {
    this.reader = reader;
    this.policy = policy;
    this.limits = limits;
    this.block = block;
    this.progress = progress;
  }

  /** Makes a run with the usual block. */
  public static NdjsonRun of(ForeignReader reader, Policy policy, Limits limits) {
    return new NdjsonRun(reader, policy, limits, USUAL_BLOCK, lines -> {});
  }

  /** Returns this run with another number of lines in a block. */
  public NdjsonRun block(int lines) {
    if (lines < 1) {
      throw new IllegalArgumentException("a block needs a line");
    }
    return new NdjsonRun(reader, policy, limits, lines, progress);
  }

  /** Returns this run, telling after each block how many lines are done. */
  public NdjsonRun telling(LongConsumer listener) {
    return new NdjsonRun(reader, policy, limits, block, listener);
  }

  /**
   * Runs from the beginning, or from the checkpoint where there is one and it is asked for.
   *
   * @param report where an OperationOutcome is written for each resource
   * @return the counts of the lines that this run read
   * @throws FaultException when the checkpoint is of another input
   */
  public Report run(Path input, Path output, Optional<Path> report, boolean resume)
      throws IOException {
    Path mark = Checkpoint.beside(output);
    Optional<Checkpoint> from = resume ? Checkpoint.load(mark) : Optional.empty();
    String name = input.getFileName() + " of " + Files.size(input) + " bytes";
    from.ifPresent(checkpoint -> refuseOther(checkpoint, name));
    Report counts = new Report();
    try (InputStream raw = Files.newInputStream(input);
        Lines lines = new Lines(raw, Math.min(limits.documentLength(), Integer.MAX_VALUE - 8));
        FileChannel out = open(part(output), from.map(Checkpoint::bytes));
        FileChannel told =
            open(part(report.orElse(besides(output))), from.map(Checkpoint::reportBytes))) {
      skip(lines, from.map(Checkpoint::lines).orElse(0L));
      List<Lines.Line> next = next(lines);
      while (!next.isEmpty()) {
        block(next, out, told, counts);
        long done = next.get(next.size() - 1).number();
        new Checkpoint(name, done, out.position(), told.position()).save(mark);
        progress.accept(done);
        next = next(lines);
      }
    }
    finish(output, report, mark);
    return counts;
  }

  private void block(List<Lines.Line> lines, FileChannel out, FileChannel told, Report counts)
      throws IOException {
    List<Result<Raw>> parsed = lines.parallelStream().map(this::parse).toList();
    List<Raw> documents = new ArrayList<>();
    List<Long> numbers = new ArrayList<>();
    StringBuilder outcomes = new StringBuilder();
    for (int i = 0; i < parsed.size(); i++) {
      long number = lines.get(i).number();
      if (parsed.get(i) instanceof Result.Ok<Raw> ok) {
        documents.add(ok.value());
        numbers.add(number);
      } else if (!lines.get(i).text().isBlank()) {
        counts.addUnreadable();
        parsed
            .get(i)
            .faults()
            .forEach(f -> outcomes.append(Report.unreadable("line " + number, f)).append('\n'));
      }
    }
    Reading reading = reader.readTogether(documents);
    counts.add(reading);
    if (!policy.accepts(reading)) {
      outcomes
          .append(
              Report.unreadable(
                  "lines to " + numbers.get(numbers.size() - 1),
                  Fault.of("", "something left over", "nothing, under the strict policy")))
          .append('\n');
    }
    append(out, written(reading));
    Report.outcomes("lines from " + lines.get(0).number(), reading)
        .forEach(o -> outcomes.append(o).append('\n'));
    append(told, outcomes.toString());
  }

  private String written(Reading reading) {
    List<String> bundles =
        reading.exams().parallelStream().map(policy::applied).map(writer::write).toList();
    StringBuilder text = new StringBuilder();
    bundles.forEach(bundle -> text.append(bundle).append('\n'));
    if (policy == Policy.FAITHFUL && !reading.carried().isEmpty()) {
      text.append(writer.write(reading.carried())).append('\n');
    }
    return text.toString();
  }

  private Result<Raw> parse(Lines.Line line) {
    if (line.tooLong()) {
      return Result.refused(
          new Fault(
              "line " + line.number(),
              "more than " + limits.documentLength() + " bytes",
              "a line within the limits",
              "raise the limit"));
    }
    return reader.json().read(line.text());
  }

  private List<Lines.Line> next(Lines lines) throws IOException {
    List<Lines.Line> next = new ArrayList<>();
    while (next.size() < block) {
      Optional<Lines.Line> line = lines.next();
      if (line.isEmpty()) {
        return next;
      }
      next.add(line.get());
    }
    return next;
  }

  private static void skip(Lines lines, long count) throws IOException {
    for (long i = 0; i < count; i++) {
      lines.next();
    }
  }

  private static void refuseOther(Checkpoint checkpoint, String name) {
    if (!checkpoint.input().equals(name)) {
      throw new FaultException(
          new Fault(
              "checkpoint",
              checkpoint.input(),
              name,
              "resume with the input that was begun, or start again without resuming"));
    }
  }

  private static Path part(Path file) {
    return file.resolveSibling(file.getFileName() + ".part");
  }

  private static Path besides(Path output) {
    return output.resolveSibling(output.getFileName() + ".report.ndjson");
  }

  private static FileChannel open(Path file, Optional<Long> size) throws IOException {
    FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    channel.truncate(size.orElse(0L));
    channel.position(channel.size());
    return channel;
  }

  private static void append(FileChannel channel, String text) {
    try {
      ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(UTF_8));
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
    } catch (IOException unwritable) {
      throw new UncheckedIOException(unwritable);
    }
  }

  private static void finish(Path output, Optional<Path> report, Path mark) throws IOException {
    Files.move(part(output), output, StandardCopyOption.REPLACE_EXISTING);
    Path told = report.orElse(besides(output));
    if (report.isPresent()) {
      Files.move(part(told), told, StandardCopyOption.REPLACE_EXISTING);
    } else {
      Files.deleteIfExists(part(told));
    }
    Files.deleteIfExists(mark);
  }
}
