package org.isopter.task.convert;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.mapper.foreign.reading.Carried;
import org.isopter.mapper.foreign.run.CarriedFile;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Result;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.InputDocuments;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.InputSource;
import org.isopter.task.input.Records;
import org.isopter.task.output.Output;
import org.isopter.task.report.Issue;
import org.isopter.task.report.RecordErrors;
import org.isopter.task.report.RunLog;

/**
 * Turns every record into a bundle with what goes along with it, and puts it out; what cannot be
 * turned is reported.
 */
public final class ToFhirConversion {

  private final RunLog log;
  private final Bundles bundles;
  private final InputForm form;
  private final CarriedLookup along;
  private final RecordErrors errors;
  private final Records records = new Records();
  private boolean single;

  public ToFhirConversion(
      RunLog log, Bundles bundles, InputForm form, CarriedLookup along, RecordErrors errors) {
    this.log = log;
    this.bundles = bundles;
    this.form = form;
    this.along = along;
    this.errors = errors;
  }

  /** Returns this conversion into an output that holds one document. */
  public ToFhirConversion single() {
    single = true;
    return this;
  }

  /** Turns every record of the sources; one that cannot be turned never stops the rest. */
  public void run(List<InputSource> sources, Output output) {
    Set<Path> claimed =
        sources.stream()
            .filter(source -> source.form() != InputForm.CARRIED)
            .flatMap(source -> source.file().map(CarriedFile::beside).stream())
            .collect(Collectors.toSet());
    try (output) {
      for (InputSource source : sources) {
        if (source.form() != InputForm.CARRIED) {
          new InputDocuments(log).each(List.of(source), item -> one(item, output));
        } else if (source.file().filter(claimed::contains).isPresent()) {
          continue;
        }
        if (!along.isOneForAll()) {
          rest(source, output);
        }
      }
      if (along.isOneForAll() && !sources.isEmpty()) {
        rest(sources.get(sources.size() - 1), output);
      }
      output.commit();
    }
  }

  private void one(InputDocument item, Output output) {
    Result<Exam> exam = records.read(item);
    if (exam instanceof Result.Ok<Exam> ok) {
      if (!errors.admits(item.position(), ok.value())) {
        return;
      }
      Carried carried = along.with(item, ok.value());
      put(item, bundles.write(ok.value(), carried, item.bytes(), form), output);
    } else {
      log.refuseFor(item.position(), exam.faults());
    }
  }

  /** Puts what goes along without a record, and tells of what found no record. */
  private void rest(InputSource source, Output output) {
    Optional<Carried> next = along.rest(source);
    int number = 0;
    while (next.isPresent()) {
      InputDocument item = new InputDocument(rest(source), ++number, new byte[0]);
      if (single && log.done() > 0) {
        String text = "no room for what came without an examination: take --format ndjson";
        Issue issue = Issue.of(Issue.Severity.ERROR, "too-long", item.position(), text);
        log.refuse(item.position(), List.of(issue));
      } else {
        put(item, bundles.write(next.get(), form), output);
      }
      next = along.rest(source);
    }
    along.tellLeft(source);
  }

  private InputSource rest(InputSource source) {
    String own = String.valueOf(source.inside().getFileName());
    String stem = own.contains(".") ? own.substring(0, own.indexOf('.')) : own;
    String name = along.of(source).map(Path::toString).orElse(source.name());
    Path inside = source.inside().resolveSibling(stem + "-rest.ndjson");
    return new InputSource(name, InputForm.NDJSON, inside, source.opener());
  }

  private void put(InputDocument item, Result<String> text, Output output) {
    if (text instanceof Result.Ok<String> ok) {
      Optional<Issue> obstacle = output.put(item, ok.value());
      obstacle.ifPresentOrElse(
          issue -> log.refuse(item.position(), List.of(issue)),
          () -> log.accept(item.position(), List.of()));
    } else {
      log.refuseFor(item.position(), text.faults());
    }
  }
}
