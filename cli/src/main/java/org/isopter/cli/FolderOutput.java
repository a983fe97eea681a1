package org.isopter.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

/** Puts each document into a file of its own, named after its source. */
final class FolderOutput implements Output {

  private final Path folder;
  private final Form form;
  private final Set<Path> taken = new HashSet<>();

  FolderOutput(Path folder, Form form) {
    this.folder = folder;
    this.form = form;
  }

  @Override
  public Optional<Issue> put(Item item, String text) {
    Path target = folder.resolve(name(item));
    if (!taken.add(target)) {
      return Optional.of(twice(item, target));
    }
    try (SafeFile file = SafeFile.at(target)) {
      Output.write(file, target.toString(), text);
      file.commit();
      return Optional.empty();
    } catch (IOException failed) {
      throw new UnwritableException(target.toString(), failed);
    }
  }

  @Override
  public void commit() {}

  @Override
  public void close() {}

  private Path name(Item item) {
    Path inside = item.source().inside();
    String own = String.valueOf(inside.getFileName());
    String stem = own.contains(".") ? own.substring(0, own.lastIndexOf('.')) : own;
    String line = item.line() > 0 ? "-" + item.line() : "";
    return inside.resolveSibling(stem + line + "." + form.ending());
  }

  private static Issue twice(Item item, Path target) {
    String text = target + " was already written from another input of the same name";
    return Issue.of(Issue.Severity.ERROR, "duplicate", item.position(), text);
  }
}
