package org.isopter.task.output;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.mapper.io.AtomicFile;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.InputSource;
import org.isopter.task.io.RealPath;
import org.isopter.task.io.Utf8;
import org.isopter.task.report.Issue;
import org.isopter.task.report.Position;

/** Puts each document into a file of its own, named after its source. */
public final class FolderOutput implements Output {

  private final Path folder;
  private final InputForm form;
  private final Set<Path> inputs;
  private final Set<Path> taken = new HashSet<>();

  /**
   * Makes an output.
   *
   * @param inputs what is read; none of it is ever written over
   */
  public FolderOutput(Path folder, InputForm form, List<InputSource> inputs) {
    this.folder = folder;
    this.form = form;
    this.inputs =
        inputs.stream()
            .flatMap(input -> input.file().stream())
            .map(RealPath::of)
            .collect(Collectors.toSet());
  }

  @Override
  public Optional<Issue> put(InputDocument item, String text) {
    String line = item.line() > 0 ? "-" + item.line() : "";
    return put(name(item.source().inside(), line), item.position(), text);
  }

  @Override
  public void put(String text) {
    throw new UnsupportedOperationException("a file in a folder is named after its document");
  }

  /**
   * Puts a text into a file of that name in the folder, unless it is taken.
   *
   * @throws UnwritableException when the file cannot be written
   */
  public Optional<Issue> put(Path name, Position document, String text) {
    Path target = folder.resolve(name);
    if (inputs.contains(RealPath.of(target))) {
      return Optional.of(overInput(document, target));
    }
    if (!taken.add(target)) {
      return Optional.of(twice(document, target));
    }
    try (AtomicFile file = AtomicFile.at(target)) {
      Utf8.write(file, target.toString(), text);
      file.commit();
      return Optional.empty();
    } catch (IOException failed) {
      throw new UnwritableException(target.toString(), failed);
    }
  }

  /** Returns the name of the file for a document: its own, a number, and the ending of the form. */
  public Path name(Path inside, String number) {
    return name(inside, number, form.ending());
  }

  /** Returns the name of the file for a document: its own, a number, and an ending. */
  public static Path name(Path inside, String number, String ending) {
    String own = InputForm.plain(String.valueOf(inside.getFileName()));
    String stem = own.contains(".") ? own.substring(0, own.lastIndexOf('.')) : own;
    return inside.resolveSibling(stem + number + "." + ending);
  }

  @Override
  public void commit() {}

  @Override
  public void close() {}

  private static Issue overInput(Position document, Path target) {
    String text = target + " is an input, which is never written over: name another folder";
    return Issue.of(Issue.Severity.ERROR, "conflict", document, text);
  }

  private static Issue twice(Position document, Path target) {
    String text = target + " was already written from another input of the same name";
    return Issue.of(Issue.Severity.ERROR, "duplicate", document, text);
  }
}
