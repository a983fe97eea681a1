package org.isopter.cli.command;

import java.util.List;
import java.util.Optional;
import org.isopter.cli.option.RecordInputs;
import org.isopter.cli.option.UrgencyList;
import org.isopter.model.exam.Exam;
import org.isopter.model.letter.Letter;
import org.isopter.model.letter.Summary;
import org.isopter.model.letter.UrgencyRules;
import org.isopter.model.value.Result;
import org.isopter.task.input.InputDocuments;
import org.isopter.task.input.InputForms;
import org.isopter.task.input.Records;
import org.isopter.task.io.Streams;
import org.isopter.task.page.SummaryForm;
import org.isopter.task.page.SummaryStyle;
import org.isopter.task.report.RunLog;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Puts records into plain words. */
@Command(
    name = "summary",
    description = {
      "Puts a record into plain words, one page to go with a referral letter.",
      "Both eyes side by side, what was not done and why, what is not recorded, and apart from that",
      "what follows."
    },
    footer = {
      "",
      "Examples:",
      "  isopter summary docs/demo/02-net-mender.yaml",
      "  isopter summary docs/demo/02-net-mender.yaml --format markdown",
      "  isopter summary docs/demo/02-net-mender.yaml --detail",
      "  isopter summary docs/demo/07-bell-founder.yaml --urgency-hints uk-c205"
    })
public final class SummaryCommand extends InputCommand {

  @Option(
      names = "--format",
      paramLabel = "FORM",
      defaultValue = "text",
      description = "Form of the page: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).")
  SummaryForm format = SummaryForm.TEXT;

  @Option(
      names = "--style",
      paramLabel = "STYLE",
      defaultValue = "letter",
      description = "How findings are put: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).")
  SummaryStyle style = SummaryStyle.LETTER;

  @Option(
      names = "--urgency-hints",
      paramLabel = "LIST",
      converter = UrgencyList.class,
      description = {
        "Say what is on a published list of urgent findings: uk-c205. Off unless asked for.",
        "uk-c205 is \"Urgency of referrals\" of the College of Optometrists, United Kingdom."
      })
  @Nullable UrgencyRules urgencyHints;

  @Option(
      names = "--detail",
      description = "Add all that follows, with arithmetic, reasons, certainty and sources.")
  boolean detail;

  @Mixin final RecordInputs forms = new RecordInputs();

  public SummaryCommand(Streams streams) {
    super(streams);
  }

  @Override
  InputForms forms() {
    return forms;
  }

  @Override
  public void run(RunLog journal) {
    Records records = new Records();
    Letter plain = format.letter();
    Letter whole = detail ? plain.detailed() : plain;
    Letter letter = Optional.ofNullable(urgencyHints).map(whole::with).orElse(whole);
    new InputDocuments(journal)
        .each(
            sources(journal),
            item -> {
              Result<Exam> exam = records.read(item);
              if (exam instanceof Result.Ok<Exam> ok) {
                print(letter.write(Summary.of(ok.value(), style.words())), journal.done() > 0);
                journal.accept(item.position(), List.of());
              } else {
                journal.refuseFor(item.position(), exam.faults());
              }
            });
  }

  private void print(String page, boolean another) {
    streams.out().print(another ? "\n\n" + page : page);
  }
}
