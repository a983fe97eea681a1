package org.isopter.mapper.foreign.run;

import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.io.Inflated;
import org.isopter.mapper.io.Lines;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/**
 * Reads a file of one resource or bundle per line in constant memory and writes one record per
 * examination and line, with what goes along in a file beside them.
 *
 * <p>Lines are read in blocks: what one refers to, and what belongs to one visit, is found within a
 * block. Blocks are written in the order of the file, within a block the examinations in the order
 * of their first lines. A line that cannot be read is reported and never stops the rest.
 *
 * <p>The files grow beside their names and are renamed at the end; a checkpoint tells how far all
 * of them have come, so that a run that was killed can go on without loss or duplicate.
 */
public final class NdjsonRun {

  /** Hears how far a run has come. */
  @FunctionalInterface
  public interface Listener {
    /** Takes how many lines are done, and which share of the input that is, from 0 to 1. */
    void at(long lines, double share);
  }

  /** Records that are made before they are written. */
  private static final int PORTION = 200;

  private final Intake intake;
  private final Policy policy;
  private final Listener progress;
  private final RecordWriter writer = new RecordWriter();

  private NdjsonRun(Intake intake, Policy policy, Listener progress) {
    this.intake = intake;
    this.policy = policy;
    this.progress = progress;
  }

  /**
   * Makes a run.
   *
   * @param intake how lines are read; its receiver is handed everything before it is written
   */
  public static NdjsonRun of(Intake intake, Policy policy) {
    return new NdjsonRun(intake, policy, (lines, share) -> {});
  }

  /** Returns this run, telling after each block how many lines are done. */
  public NdjsonRun telling(Listener listener) {
    return new NdjsonRun(intake, policy, listener);
  }

  /**
   * Runs from the beginning, or from the checkpoint where there is one and it is asked for.
   *
   * @param asked what else decides about the output, in words; a run goes on only where it is the
   *     same
   * @throws FaultException when the checkpoint is of another run, or its files are not there
   * @throws IOException when an input cannot be read or an output not be written
   */
  public void run(Path input, NdjsonFiles files, String asked, boolean resume) throws IOException {
    Path mark = Checkpoint.beside(files.records());
    String deleted = Deletions.beside(input.toString()).digest();
    String name =
        "%s of %d bytes, %s%s"
            .formatted(
                input.getFileName(),
                Files.size(input),
                asked,
                deleted.isEmpty() ? "" : ", without " + deleted);
    Checkpoint from = resume ? begun(mark, name, files) : Checkpoint.start(name);
    if (!resume) {
      Files.deleteIfExists(mark);
    }
    Path reportFile = files.report().orElse(besides(files.records()));
    try (FileChannel raw = FileChannel.open(input);
        Lines lines =
            new Lines(Inflated.whereCompressed(Channels.newInputStream(raw)), intake.longest());
        GrowingFile records = GrowingFile.open(files.records(), from.records());
        GrowingFile carried = GrowingFile.open(files.carried(), from.carried());
        GrowingFile report = GrowingFile.open(reportFile, from.report())) {
      skip(lines, from.lines());
      boolean carries =
          blocks(
              input,
              raw,
              lines,
              new Written(records, carried, report, from.carries() > 0),
              from,
              mark);
      end(carried, carries);
      if (!carries) {
        // One of an earlier run would tell of other records.
        Files.deleteIfExists(files.carried());
      }
      end(report, files.report().isPresent());
      records.finish();
    }
    Files.deleteIfExists(mark);
  }

  private boolean blocks(
      Path input, FileChannel raw, Lines lines, Written written, Checkpoint from, Path mark)
      throws IOException {
    Intake reading = intake.to(written);
    Deletions deletions = Deletions.beside(input.toString());
    List<Lines.Line> next = reading.next(lines);
    while (!next.isEmpty()) {
      reading.block(new Origin(input.toString(), 0, ""), next, deletions);
      long done = next.get(next.size() - 1).number();
      written.mark(from.run(), done).save(mark);
      progress.at(done, share(raw));
      next = reading.next(lines);
    }
    return written.carries;
  }

  private static double share(FileChannel raw) throws IOException {
    return raw.size() == 0 ? 1 : raw.position() / (double) raw.size();
  }

  /** Writes what was read. */
  private final class Written implements Receiver {
    private final GrowingFile records;
    private final GrowingFile carried;
    private final GrowingFile report;
    private boolean carries;

    Written(GrowingFile records, GrowingFile carried, GrowingFile report, boolean carries) {
      this.records = records;
      this.carried = carried;
      this.report = report;
      this.carries = carries;
    }

    @Override
    public void refused(Origin origin, List<Fault> faults) {
      intake.receiver().refused(origin, faults);
      report.lines(Report.unreadable(origin, faults));
    }

    @Override
    public void failed(Origin origin, RuntimeException mistake) {
      intake.receiver().failed(origin, mistake);
      report.lines(Report.failed(origin));
    }

    @Override
    public void deleted(Origin origin, String name) {
      intake.receiver().deleted(origin, name);
      report.lines(Report.deleted(origin, name));
    }

    @Override
    public void read(Batch batch) {
      intake.receiver().read(batch);
      Judged judged = policy.judge(batch);
      carries |= judged.carries();
      for (int i = 0; i < judged.exams().size(); i += PORTION) {
        write(judged.exams().subList(i, Math.min(i + PORTION, judged.exams().size())));
      }
      if (!judged.rest().isEmpty()) {
        carried.lines(List.of(CarriedLine.of(judged.rest()).toJson()));
      }
      report.lines(Report.outcomes(batch));
    }

    private void write(List<ReadExam> exams) {
      records.lines(exams.parallelStream().map(exam -> writer.line(exam.exam())).toList());
      carried.lines(exams.parallelStream().map(exam -> CarriedLine.of(exam).toJson()).toList());
    }

    Checkpoint mark(String run, long lines) throws IOException {
      return new Checkpoint(
          run, lines, records.size(), carried.size(), report.size(), carries ? 1 : 0);
    }
  }

  private static void end(GrowingFile file, boolean wanted) throws IOException {
    if (wanted) {
      file.finish();
    } else {
      file.discard();
    }
  }

  private static Checkpoint begun(Path mark, String name, NdjsonFiles files) throws IOException {
    Optional<Checkpoint> found = Checkpoint.load(mark);
    if (found.isEmpty()) {
      return Checkpoint.start(name);
    }
    Checkpoint from = found.get();
    if (!from.run().equals(name)) {
      throw other(from.run(), name);
    }
    boolean there =
        GrowingFile.size(files.records()) >= from.records()
            && GrowingFile.size(files.carried()) >= from.carried()
            && GrowingFile.size(files.report().orElse(besides(files.records()))) >= from.report();
    if (!there) {
      throw other(
          "less of the files than the checkpoint tells", "the files of the run that was begun");
    }
    return from;
  }

  private static FaultException other(String seen, String wanted) {
    return new FaultException(
        new Fault(
            "checkpoint", seen, wanted, "go on as it was begun, or start again without resuming"));
  }

  private static void skip(Lines lines, long count) throws IOException {
    for (long i = 0; i < count; i++) {
      lines.next();
    }
  }

  private static Path besides(Path output) {
    return output.resolveSibling(output.getFileName() + ".report");
  }
}
