package org.isopter.cli.command;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.isopter.cli.option.RecordInputs;
import org.isopter.model.compare.Comparison;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Result;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.InputDocuments;
import org.isopter.task.input.InputForms;
import org.isopter.task.input.Records;
import org.isopter.task.io.Streams;
import org.isopter.task.page.ComparisonJson;
import org.isopter.task.page.ComparisonText;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.WordForm;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Compares the examinations of one person. */
@Command(
    name = "compare",
    description = {
      "Tells what changed between the records of one person, eye by eye.",
      "Two files, or a folder with the records of one person; they are put in order of time."
    },
    footer = {
      "",
      "Examples:",
      "  isopter compare docs/demo/04-rope-maker.yaml"
          + " docs/demo/05-rope-maker-three-months-later.json"
    })
public final class CompareCommand extends InputCommand {

  @Option(
      names = "--format",
      paramLabel = "FORM",
      defaultValue = "text",
      description = {
        "How to tell: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).",
        "json is one object a line, for each pair of records."
      })
  WordForm format = WordForm.TEXT;

  @Option(names = "--all", description = "Tell what stayed the same too.")
  boolean all;

  @Mixin final RecordInputs forms = new RecordInputs();

  public CompareCommand(Streams streams) {
    super(streams);
  }

  @Override
  InputForms forms() {
    return forms;
  }

  /**
   * One record of several.
   *
   * @param item where it comes from
   * @param exam what it holds
   */
  private record Visit(InputDocument item, Exam exam) {}

  @Override
  public void run(RunLog journal) {
    List<Visit> visits = new ArrayList<>();
    Records records = new Records();
    new InputDocuments(journal)
        .each(sources(journal), item -> read(item, records, visits, journal));
    visits.sort(Comparator.comparing(visit -> visit.exam().header().performed()));
    if (visits.size() < 2 && journal.status() == ExitStatus.OK) {
      throw misuse("there are " + visits.size() + " records to compare: two or more are needed");
    }
    for (int i = 1; i < visits.size(); i++) {
      compare(visits.get(i - 1), visits.get(i), journal);
    }
  }

  private static void read(
      InputDocument item, Records records, List<Visit> visits, RunLog journal) {
    Result<Exam> exam = records.read(item);
    if (exam instanceof Result.Ok<Exam> ok) {
      visits.add(new Visit(item, ok.value()));
    } else {
      journal.refuseFor(item.position(), exam.faults());
    }
  }

  private void compare(Visit one, Visit other, RunLog journal) {
    Result<Comparison> compared = Comparison.of(one.exam(), other.exam());
    if (compared instanceof Result.Ok<Comparison> ok) {
      String told =
          format == WordForm.TEXT
              ? ComparisonText.of(ok.value(), all)
              : ComparisonJson.of(ok.value(), all);
      streams.out().print(told);
      journal.accept(other.item().position(), List.of());
    } else {
      journal.refuseFor(other.item().position(), compared.faults());
    }
  }
}
