package org.isopter.task.convert;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.foreign.run.Batch;
import org.isopter.mapper.foreign.run.CarriedLine;
import org.isopter.mapper.foreign.run.Judged;
import org.isopter.mapper.foreign.run.Origin;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.InputSource;
import org.isopter.task.input.Records;
import org.isopter.task.output.FolderOutput;
import org.isopter.task.report.Issue;
import org.isopter.task.report.Position;
import org.isopter.task.report.RunLog;

/** Puts each record into a file of its own, named after the first document it came from. */
public final class FolderRecords implements RecordOutput {

  private final FolderOutput folder;
  private final Path target;
  private final InputForm form;
  private final Function<Origin, Path> inside;
  private final Optional<CarriedOutput> carried;
  private final RunLog log;
  private final Records records = new Records();
  private boolean carries;

  /**
   * Makes an output.
   *
   * @param sources what is read; each record is named after where its document lies in it
   * @param carried one file for all that goes along; empty for a file beside each record
   */
  public FolderRecords(
      Path target,
      InputForm form,
      List<InputSource> sources,
      Optional<CarriedOutput> carried,
      RunLog log) {
    this.folder = new FolderOutput(target, form, sources);
    this.target = target;
    this.form = form;
    Map<String, Path> below = new HashMap<>();
    sources.forEach(source -> below.put(source.name(), source.inside()));
    this.inside = origin -> below.getOrDefault(origin.name(), Path.of(origin.name()));
    this.carried = carried;
    this.log = log;
  }

  @Override
  public void put(Batch batch, Judged judged) {
    Map<Origin, List<ReadExam>> byOrigin = new LinkedHashMap<>();
    judged
        .exams()
        .forEach(
            exam -> byOrigin.computeIfAbsent(batch.of(exam), any -> new ArrayList<>()).add(exam));
    byOrigin.forEach(this::put);
    if (!judged.rest().isEmpty()) {
      along(name(batch.origins().get(0), ""), CarriedLine.of(judged.rest()));
    }
  }

  private void put(Origin origin, List<ReadExam> exams) {
    for (int i = 0; i < exams.size(); i++) {
      ReadExam exam = exams.get(i);
      Path name = name(origin, exams.size() == 1 ? "" : "-" + (i + 1));
      Position at = ForeignReporter.position(origin);
      String text = records.write(exam.exam(), form);
      Optional<Issue> obstacle = folder.put(name, at, text);
      if (obstacle.isPresent()) {
        log.refuse(at, List.of(obstacle.get()));
      } else {
        along(name, CarriedLine.of(exam));
      }
    }
  }

  private void along(Path name, CarriedLine line) {
    carries |= !line.carried().isEmpty();
    if (carried.isPresent()) {
      carried.get().put(line);
      return;
    }
    try (CarriedOutput own = CarriedOutput.beside(target.resolve(name))) {
      own.put(line);
      own.commit();
    }
  }

  private Path name(Origin origin, String number) {
    String line = origin.line() > 0 ? "-" + origin.line() : "";
    return folder.name(inside.apply(origin), line + number);
  }

  @Override
  public void commit() {
    carried.ifPresent(CarriedOutput::commit);
  }

  @Override
  public String where() {
    String beside =
        carried.isPresent()
            ? carried.get().where().map(file -> "; what was left over is in " + file).orElse("")
            : carries ? "; what was left over is beside them" : "";
    return " written as " + form + " to " + target + "/" + beside;
  }

  @Override
  public void close() {
    carried.ifPresent(CarriedOutput::close);
  }
}
