package org.isopter.task.input;

import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import java.util.function.Consumer;
import org.isopter.mapper.io.Lines;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.task.report.Issue;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;

/** Takes sources apart into documents. */
public final class InputDocuments {

  /** The most bytes of one document; a full examination as FHIR has some sixty thousand. */
  public static final int LONGEST = 1 << 26;

  /** Is called for a document that was reported and not processed. */
  @FunctionalInterface
  public interface Lost {
    void at(InputSource source, int line, String reason);
  }

  private final RunLog log;
  private final Lost lost;

  public InputDocuments(RunLog log) {
    this(log, (source, line, reason) -> {});
  }

  public InputDocuments(RunLog log, Lost lost) {
    this.log = log;
    this.lost = lost;
  }

  /** Hands every document on; a bad one is reported and never stops the rest. */
  public void each(Iterable<InputSource> sources, Consumer<InputDocument> use) {
    for (InputSource source : sources) {
      try (InputStream in = source.opener().open()) {
        each(source, in, use);
      } catch (IOException failed) {
        log.unreadable(source.name(), failed);
        lost.at(source, 0, "unreadable");
      }
    }
  }

  private void each(InputSource source, InputStream in, Consumer<InputDocument> use)
      throws IOException {
    int found = source.mayHoldSeveral() ? lines(source, in, use) : whole(source, in, use);
    if (found == 0) {
      log.say(source.name() + " is empty: nothing to do");
    }
  }

  private int whole(InputSource source, InputStream in, Consumer<InputDocument> use)
      throws IOException {
    InputDocument item = new InputDocument(source, 0, in.readNBytes(LONGEST + 1));
    // Behind the longest document something may follow the blanks.
    if (item.isBlank() && item.bytes().length <= LONGEST) {
      return 0;
    }
    one(item, use);
    return 1;
  }

  private int lines(InputSource source, InputStream in, Consumer<InputDocument> use)
      throws IOException {
    Lines lines = new Lines(in, LONGEST + 1);
    int found = 0;
    Optional<Lines.Line> line = lines.next();
    while (line.isPresent()) {
      int number = Math.toIntExact(line.get().number());
      InputDocument item = new InputDocument(source, number, line.get().bytes());
      if (!item.isBlank()) {
        found++;
        one(item, use);
      }
      line = lines.next();
    }
    return found;
  }

  private void one(InputDocument item, Consumer<InputDocument> use) {
    if (item.bytes().length > LONGEST) {
      String text = "more than " + (LONGEST >> 20) + " MB for one document";
      Issue issue = Issue.of(Issue.Severity.ERROR, "too-long", item.position(), text);
      log.refuse(item.position(), java.util.List.of(issue));
      lost.at(item.source(), item.line(), "too-long");
      return;
    }
    try {
      use.accept(item);
    } catch (UnwritableException | UsageException ending) {
      throw ending;
    } catch (RuntimeException mistake) {
      log.broken(item.position(), mistake);
    }
  }
}
