package org.isopter.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.model.value.Result;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What the commands that turn documents into others have in common. */
abstract class ConvertCommand extends InputCommand {

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE|FOLDER",
      description = {
        "Where to write; standard output unless given.",
        "A FOLDER (it exists, or ends in /) gets a file for each input."
      })
  @Nullable String output;

  ConvertCommand(Streams streams) {
    super(streams);
  }

  /** Returns the step from a document to the text in a form. */
  abstract Function<Item, Result<String>> step(Form form);

  /** Returns the form that the command line states for the output. */
  abstract Optional<Form> wanted();

  /** Returns the form of the output for one document. */
  abstract Form usual();

  @Override
  final void run(Journal journal) {
    boolean several = inputs.size() > 1 || Files.isDirectory(Path.of(inputs.get(0)));
    List<Source> sources = sources(journal);
    several |= sources.stream().anyMatch(Source::mayHoldSeveral);
    Form form = wanted().orElse(several && !toFolder() ? Form.NDJSON : usual());
    check(form, several);
    new Conversion(journal, step(form)).run(sources, output(form));
    summary(journal, form);
  }

  private void check(Form form, boolean several) {
    if (toFolder() && form == Form.NDJSON) {
      throw misuse("--format ndjson is one stream: give --output a file, not a folder");
    }
    if (several && !toFolder() && form != Form.NDJSON) {
      throw misuse(
          "--format %s holds one document: give --output a folder, or take --format ndjson"
              .formatted(form));
    }
  }

  private Output output(Form form) {
    if (output == null) {
      return Output.to(streams.out());
    }
    Path target = Path.of(output);
    return toFolder()
        ? new FolderOutput(target, form)
        : new FileOutput(target, form == Form.NDJSON);
  }

  private boolean toFolder() {
    return output != null && (output.endsWith("/") || Files.isDirectory(Path.of(output)));
  }

  /** Says what was done where the output itself does not show it. */
  private void summary(Journal journal, Form form) {
    if (output != null || journal.refused() > 0) {
      String where = output == null ? "" : " to " + output;
      String refused = journal.refused() == 0 ? "" : ", " + journal.refused() + " refused";
      journal.say(
          Words.count(journal.done(), "document") + " written as " + form + where + refused);
    }
  }
}
