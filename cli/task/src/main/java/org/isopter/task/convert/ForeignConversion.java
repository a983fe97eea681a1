package org.isopter.task.convert;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.foreign.run.Batch;
import org.isopter.mapper.foreign.run.Intake;
import org.isopter.mapper.foreign.run.Judged;
import org.isopter.mapper.foreign.run.Origin;
import org.isopter.mapper.foreign.run.Receiver;
import org.isopter.mapper.foreign.run.Report;
import org.isopter.model.value.Fault;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.InputSource;
import org.isopter.task.report.Progress;
import org.isopter.task.report.RunLog;

/** Reads every source as FHIR of any system and puts out what a policy lets pass. */
public final class ForeignConversion implements Receiver {

  private final ReadingOptions foreign;
  private final ForeignReporter reporter;
  private final RunLog log;
  private final RecordOutput output;
  private final Progress progress;

  public ForeignConversion(
      ReadingOptions foreign,
      ForeignReporter reporter,
      RunLog log,
      RecordOutput output,
      Progress progress) {
    this.foreign = foreign;
    this.reporter = reporter;
    this.log = log;
    this.output = output;
    this.progress = progress;
  }

  /** Reads every source; what cannot be read is reported and never stops the rest. */
  public void run(List<InputSource> sources) {
    Intake intake = foreign.intake(this);
    for (InputSource source : sources) {
      try (InputStream in = source.opener().open()) {
        if (take(intake, source, in) == 0) {
          log.say(source.name() + " is empty: nothing to do");
        }
      } catch (IOException failed) {
        log.unreadable(source.name(), failed);
      }
    }
    intake.finish();
    output.commit();
  }

  private long take(Intake intake, InputSource source, InputStream in) throws IOException {
    Origin origin = new Origin(source.name(), 0, folder(source));
    if (source.mayHoldSeveral()) {
      return intake.lines(origin, in);
    }
    InputDocument item = new InputDocument(source, 0, in.readNBytes(foreign.bytes() + 1));
    // Behind the longest document something may follow the blanks.
    if (item.isBlank() && item.bytes().length <= foreign.bytes()) {
      return 0;
    }
    intake.document(origin, item.bytes());
    return 1;
  }

  private static String folder(InputSource source) {
    Optional<Path> folder =
        source.file().map(file -> file.toAbsolutePath().normalize()).map(Path::getParent);
    return folder.map(Path::toString).orElse("");
  }

  @Override
  public void refused(Origin origin, List<Fault> faults) {
    reporter.refused(origin, faults);
    log.outcomes(() -> Report.unreadable(origin, faults));
  }

  @Override
  public void failed(Origin origin, RuntimeException mistake) {
    reporter.failed(origin, mistake);
  }

  @Override
  public void deleted(Origin origin, String name) {
    reporter.deleted(origin, name);
    log.outcomes(() -> Report.deleted(origin, name));
  }

  @Override
  public void read(Batch batch) {
    reporter.read(batch);
    log.outcomes(() -> Report.outcomes(batch));
    Judged judged = foreign.policy().judge(batch);
    output.put(batch, judged);
    progress.at(reporter.counts().resources());
  }
}
