package org.isopter.task.page;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import org.isopter.mapper.io.AtomicFile;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.task.input.InputDocument;
import org.isopter.task.output.FolderOutput;

/** Puts the page of each record into a file of its own, named after the file of the record. */
final class PageFolder {

  private final Path folder;
  private final String ending;
  private final Set<Path> written = new HashSet<>();

  PageFolder(Path folder, String ending) {
    this.folder = folder;
    this.ending = ending;
  }

  /**
   * Writes a page and returns its file.
   *
   * @throws UnwritableException when it cannot be written, or was written for another record
   */
  Path put(InputDocument record, byte[] page) {
    Path file = folder.resolve(name(record));
    if (!written.add(file)) {
      throw new UnwritableException(
          file.toString(), new IOException("another record of that name has its page there"));
    }
    try (AtomicFile target = AtomicFile.at(file)) {
      target.write(page);
      target.commit();
      return file;
    } catch (IOException failed) {
      throw new UnwritableException(file.toString(), failed);
    }
  }

  private Path name(InputDocument record) {
    String line = record.line() > 0 ? "-" + record.line() : "";
    return FolderOutput.name(record.source().inside(), line, ending);
  }
}
