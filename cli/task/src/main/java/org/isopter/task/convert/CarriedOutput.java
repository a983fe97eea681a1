package org.isopter.task.convert;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.isopter.mapper.foreign.run.CarriedFile;
import org.isopter.mapper.foreign.run.CarriedLine;
import org.isopter.mapper.io.AtomicFile;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.task.io.Utf8;

/** Puts what goes along with records into a file, or finds that there is no place for it. */
public final class CarriedOutput implements AutoCloseable {

  private final Optional<Path> target;
  private final Optional<AtomicFile> file;
  private final boolean evenEmpty;
  private boolean carries;

  private CarriedOutput(Optional<Path> target, boolean evenEmpty) {
    this.target = target;
    this.file = target.map(AtomicFile::at);
    this.evenEmpty = evenEmpty;
  }

  /** Returns an output into the file that was asked for: it is there also when it is empty. */
  public static CarriedOutput into(Path file) {
    return new CarriedOutput(Optional.of(file), true);
  }

  /**
   * Returns an output into the file beside records, which is there only where it holds anything.
   */
  public static CarriedOutput beside(Path records) {
    return new CarriedOutput(Optional.of(CarriedFile.beside(records)), false);
  }

  /** Returns an output that only notes whether there was anything. */
  public static CarriedOutput nowhere() {
    return new CarriedOutput(Optional.empty(), false);
  }

  void put(CarriedLine line) {
    carries |= !line.carried().isEmpty();
    file.ifPresent(out -> Utf8.write(out, name(), line.toJson() + "\n"));
  }

  /** Says whether something found no place. */
  public boolean hasLost() {
    return carries && target.isEmpty();
  }

  /** Returns where what goes along stands; empty where nothing does. */
  Optional<Path> where() {
    return target.filter(any -> carries);
  }

  void commit() {
    if (carries || evenEmpty) {
      file.ifPresent(AtomicFile::commit);
    } else if (target.isPresent()) {
      discardOlder(target.get());
    }
  }

  /** One of an earlier run would tell of records that are no longer there. */
  private static void discardOlder(Path file) {
    try {
      Files.deleteIfExists(file);
    } catch (IOException failed) {
      throw new UnwritableException(file.toString(), failed);
    }
  }

  @Override
  public void close() {
    try {
      if (file.isPresent()) {
        file.get().close();
      }
    } catch (IOException failed) {
      throw new UnwritableException(name(), failed);
    }
  }

  private String name() {
    return target.map(Path::toString).orElse("");
  }
}
