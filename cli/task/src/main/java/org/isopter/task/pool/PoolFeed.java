package org.isopter.task.pool;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.mapper.pool.PoolDocument;
import org.isopter.mapper.pool.PoolRun;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Result;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.InputDocuments;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.InputSource;
import org.isopter.task.input.Records;
import org.isopter.task.io.Messages;
import org.isopter.task.io.UnwritableException;
import org.isopter.task.report.Position;
import org.isopter.task.report.RecordErrors;
import org.isopter.task.report.RunLog;

/** Hands the documents of sources to a pool. */
public final class PoolFeed {

  private final PoolRun run;
  private final Function<InputSource, String> names;
  private final Records records = new Records();
  private final Map<String, Integer> numbers = new HashMap<>();
  private Optional<RecordErrors> errors = Optional.empty();

  /**
   * Makes a feed.
   *
   * @param names what the tables call each source
   */
  public PoolFeed(PoolRun run, Function<InputSource, String> names) {
    this.run = run;
    this.names = names;
  }

  /**
   * Returns this feed, looking for errors in records; one that may not be used is left over. The
   * log names an input by its number, in the order in which inputs are read.
   */
  PoolFeed looking(RecordErrors search) {
    errors = Optional.of(search.withoutValues());
    return this;
  }

  public void feed(RunLog log, List<InputSource> sources) {
    sources.forEach(source -> numbers.putIfAbsent(source.name(), numbers.size() + 1));
    new InputDocuments(log, this::lose).each(sources, this::add);
  }

  /** What could not be handed over is left over too, so that everything is accounted for. */
  private void lose(InputSource source, int line, String reason) {
    try {
      run.lose(names.apply(source), line, reason);
    } catch (IOException failed) {
      throw new UnwritableException("the tables", failed);
    }
  }

  private void add(InputDocument item) {
    if (errors.isPresent() && !isAdmitted(item, errors.get())) {
      lose(item.source(), item.line(), "record-errors");
      return;
    }
    PoolDocument.Form form =
        switch (item.form()) {
          case YAML -> PoolDocument.Form.YAML;
          case XML -> PoolDocument.Form.XML;
          default -> PoolDocument.Form.JSON;
        };
    try {
      String source = names.apply(item.source());
      run.add(new PoolDocument(source, item.line(), group(item), form, item.bytes()));
    } catch (IOException failed) {
      throw new UnwritableException("the tables", failed);
    } catch (RuntimeException mistake) {
      // It met a whole batch: to go on would meet it again with every document.
      throw new UnwritableException(
          "the tables", new IOException(Messages.internal(mistake), mistake));
    }
  }

  /** The lines of a file belong together, and so do the files of a folder. */
  private static String group(InputDocument item) {
    // In full, for persons without identifiers are told apart by it.
    Path file = Path.of(item.source().name()).toAbsolutePath().normalize();
    return String.valueOf(item.line() > 0 ? file : file.getParent());
  }

  private boolean isAdmitted(InputDocument item, RecordErrors search) {
    int number = numbers.getOrDefault(item.source().name(), 0);
    Position position = new Position("input " + number, item.line(), 0);
    return isFhir(item)
        || !(records.read(item) instanceof Result.Ok<Exam> ok)
        || search.admits(position, ok.value());
  }

  /** FHIR names its type early; what does and is none is no record either. */
  private static boolean isFhir(InputDocument item) {
    String start = new String(item.bytes(), 0, Math.min(item.bytes().length, 4096), UTF_8);
    return item.form() == InputForm.XML || start.contains("\"resourceType\"");
  }
}
