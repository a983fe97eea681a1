package org.isopter.mapper.foreign.run;

import java.io.BufferedInputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.nio.channels.Channels;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.foreign.reading.Carried;
import org.isopter.mapper.io.Inflated;
import org.isopter.mapper.io.Lines;
import org.isopter.model.exam.Identifier;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Result;

/**
 * The file beside records that holds what goes along with each.
 *
 * <p>Only the places of the lines are held in memory. Records may be sorted, picked or edited in
 * the meantime: each finds its own by its identifier, and those of one identifier in their order.
 */
public final class CarriedFile implements Closeable {

  private static final String ENDING = ".carried";
  private static final String COMPRESSED = ".gz";

  /** Where a line begins, and its number. */
  private record Spot(long offset, long number) {}

  private final Path path;
  private final RandomAccessFile file;
  private final Map<Optional<Identifier>, Deque<Spot>> spots = new HashMap<>();

  private CarriedFile(Path path, RandomAccessFile file) {
    this.path = path;
    this.file = file;
  }

  /** Returns where what goes along with the records of a file stands. */
  public static Path beside(Path records) {
    String name = String.valueOf(records.getFileName());
    String plain =
        name.endsWith(COMPRESSED) ? name.substring(0, name.length() - COMPRESSED.length()) : name;
    return records.resolveSibling(plain + ENDING);
  }

  /**
   * Opens a file and finds the places of its lines.
   *
   * @throws FaultException when a line is none that was written here
   * @throws IOException when the file cannot be read
   */
  public static CarriedFile open(Path path) throws IOException {
    CarriedFile opened = new CarriedFile(path, new RandomAccessFile(path.toFile(), "r"));
    try (InputStream in = Files.newInputStream(path);
        Lines lines = new Lines(Inflated.whereCompressed(in), Integer.MAX_VALUE - 8)) {
      opened.index(lines);
    } catch (IOException | RuntimeException failed) {
      opened.close();
      throw failed;
    }
    return opened;
  }

  private void index(Lines lines) throws IOException {
    long offset = 0;
    Optional<Lines.Line> next = lines.next();
    while (next.isPresent()) {
      Lines.Line line = next.get();
      if (!line.isBlank()) {
        Optional<Identifier> record = read(line.bytes(), line.number()).record();
        spots
            .computeIfAbsent(record, any -> new ArrayDeque<>())
            .add(new Spot(offset, line.number()));
      }
      offset += line.bytes().length + 1L;
      next = lines.next();
    }
  }

  /** Returns what goes along with the next record of an identifier; nothing where nothing does. */
  public Carried take(Identifier record) {
    return take(Optional.of(record)).orElse(Carried.NOTHING);
  }

  /** Returns what came without an examination, one at a time; empty when that was all. */
  public Optional<Carried> takeRest() {
    return take(Optional.empty());
  }

  /** Returns how many lines that hold anything no record asked for. */
  public long left() {
    long left = 0;
    for (Deque<Spot> each : spots.values()) {
      for (Spot spot : each) {
        left += at(spot).carried().isEmpty() ? 0 : 1;
      }
    }
    return left;
  }

  private Optional<Carried> take(Optional<Identifier> record) {
    Deque<Spot> there = spots.getOrDefault(record, new ArrayDeque<>());
    return Optional.ofNullable(there.poll()).map(spot -> at(spot).carried());
  }

  private CarriedLine at(Spot spot) {
    try {
      file.seek(spot.offset());
      // Not closed: closing it would close the file.
      InputStream in = Channels.newInputStream(file.getChannel());
      Lines lines = new Lines(new BufferedInputStream(in, 1 << 13), Integer.MAX_VALUE - 8);
      return read(lines.next().orElseThrow().bytes(), spot.number());
    } catch (IOException failed) {
      throw new java.io.UncheckedIOException(failed);
    }
  }

  private CarriedLine read(byte[] bytes, long number) {
    Result<CarriedLine> line = CarriedLine.read(bytes);
    if (line instanceof Result.Ok<CarriedLine> ok) {
      return ok.value();
    }
    Fault fault = line.faults().get(0);
    throw new FaultException(fault.at(path + ":" + number));
  }

  @Override
  public void close() throws IOException {
    file.close();
  }
}
