package org.isopter.cli.option;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.isopter.model.drawing.SeenBy;
import org.isopter.model.letter.UrgencyRules;
import org.isopter.task.page.SummaryForm;
import org.isopter.task.page.SummaryTask;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** How a summary is written. */
public final class SummaryOptions {

  /** Finds a list of urgent findings by its name. */
  static final class UrgencyList implements ITypeConverter<UrgencyRules> {

    /** Made by picocli. */
    UrgencyList() {}

    @Override
    public UrgencyRules convert(String word) {
      return Arrays.stream(UrgencyRules.values())
          .filter(list -> list.word().equals(word))
          .findFirst()
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "\"" + word + "\" is none of " + Arrays.toString(UrgencyRules.values())));
    }
  }

  @Option(
      names = "--format",
      paramLabel = "FORM",
      defaultValue = "text",
      description = {
        "Form of the page: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).",
        "shorthand is what was recorded alone, to paste into a chart; note reads it back."
      })
  private SummaryForm format = SummaryForm.TEXT;

  @Option(
      names = "--seen-by",
      paramLabel = "SIDE",
      defaultValue = "usual",
      description = {
        "From where pictures are seen: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).",
        "usual is fields as the person sees them, all else as the examiner sees it. Discs always are."
      })
  private SeenBy view = SeenBy.USUAL;

  @Option(
      names = "--urgency-hints",
      paramLabel = "LIST",
      converter = UrgencyList.class,
      description = {
        "Say what is on a published list of urgent findings: uk-c205. Off unless asked for.",
        "uk-c205 is \"Urgency of referrals\" of the College of Optometrists, United Kingdom."
      })
  private @Nullable UrgencyRules urgencyHints;

  @Option(
      names = "--detail",
      description = "Add all that follows, with arithmetic, reasons, certainty and sources.")
  private boolean detail;

  @Option(
      names = "--output",
      paramLabel = "FOLDER",
      description = {
        "Put each page into a file of its own in this folder, and print the names of the files.",
        "pdf needs it: PDF/A-3A and PDF/UA-1, to be archived and to be read aloud."
      })
  private @Nullable Path output;

  @Mixin private final StrictOption strict = new StrictOption();

  /** Returns the task with these options. */
  public SummaryTask task(RunLog log) {
    if (format == SummaryForm.SHORTHAND && (detail || urgencyHints != null)) {
      throw new UsageException(
          "--format shorthand with --detail or --urgency-hints: wanted what was recorded alone");
    }
    return SummaryTask.of(log, format, view)
        .detailed(detail)
        .strict(strict.strict())
        .into(Optional.ofNullable(output))
        .with(Optional.ofNullable(urgencyHints));
  }
}
