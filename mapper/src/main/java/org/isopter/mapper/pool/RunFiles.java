package org.isopter.mapper.pool;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.isopter.mapper.io.AtomicFile;
import org.isopter.mapper.store.Appender;
import org.isopter.mapper.store.TableStore;

/** The files of a run beside the tables. */
final class RunFiles implements AutoCloseable {

  /**
   * What was left over, without content: how often each line was said. In no order of the input.
   */
  private final Map<String, Long> left = new TreeMap<>();

  /** The list of what was left over. */
  static final String LEFT = "leftover.ndjson";

  /** The table of the bundles, a line each. */
  static final String BUNDLES = "bundles";

  /** Their file. */
  static final String BUNDLE_LINES = "bundles.ndjson";

  private final Path leftover;
  private final Optional<Appender> bundles;
  private final Optional<AtomicFile> whole;
  private final Optional<AtomicFile> origins;
  private final boolean identified;

  /** What was left over word for word, where identities stay. */
  private final Optional<BufferedWriter> named;

  private RunFiles(
      Path leftover,
      Optional<Appender> bundles,
      Optional<AtomicFile> whole,
      Optional<AtomicFile> origins,
      boolean identified)
      throws IOException {
    this.leftover = leftover;
    this.named =
        identified ? Optional.of(Files.newBufferedWriter(leftover, UTF_8)) : Optional.empty();
    this.bundles = bundles;
    this.whole = whole;
    this.origins = origins;
    this.identified = identified;
  }

  static RunFiles open(PoolFolder folder, PoolPlan plan, TableStore store)
      throws IOException, SQLException {
    Optional<AtomicFile> whole = aside(plan.wholeLeft());
    Optional<AtomicFile> origins = aside(plan.origins());
    Optional<Appender> bundles =
        plan.bundles() ? Optional.of(store.createLines(BUNDLES)) : Optional.empty();
    return new RunFiles(folder.file(LEFT), bundles, whole, origins, plan.deidentifier().isEmpty());
  }

  private static Optional<AtomicFile> aside(Optional<Path> file) {
    return file.map(AtomicFile::forOwner);
  }

  /** Gives the files that lie elsewhere their names, once the pool is complete. */
  void commit() {
    elsewhere().forEach(AtomicFile::commit);
  }

  /** Takes away what lies elsewhere and was not finished. */
  void discard() throws IOException {
    for (AtomicFile file : elsewhere()) {
      file.close();
    }
  }

  private List<AtomicFile> elsewhere() {
    List<AtomicFile> files = new ArrayList<>();
    whole.ifPresent(files::add);
    origins.ifPresent(files::add);
    return files;
  }

  void left(Remainder one) throws IOException {
    String line = RemainderLine.of(one, identified);
    if (named.isPresent()) {
      line(named.get(), line);
    } else {
      left.merge(line, 1L, Long::sum);
    }
    if (whole.isPresent()) {
      whole.get().line(RemainderLine.whole(one));
    }
  }

  void bundle(Optional<String> bundle) throws SQLException {
    if (bundles.isPresent() && bundle.isPresent()) {
      bundles.get().add(bundle.get());
    }
  }

  /** Takes over the bundles of an older pool, where bundles are wanted. */
  void bundlesBefore(TableStore store, Path lines) throws SQLException {
    if (bundles.isPresent()) {
      store.loadLines(BUNDLES, lines);
    }
  }

  /** Counts again what an older pool left over. */
  void leftBefore(Path list) throws IOException {
    for (String line : Files.readAllLines(list)) {
      RemainderLine.Counted counted = RemainderLine.counted(line);
      left.merge(counted.plain(), counted.times(), Long::sum);
    }
  }

  private static void line(BufferedWriter writer, String text) throws IOException {
    writer.write(text);
    writer.write('\n');
  }

  /** Writes where an examination was read, under the names that it has in the tables. */
  void origin(ExamRows exam) throws IOException {
    if (origins.isPresent()) {
      for (String line : OriginLine.of(exam)) {
        origins.get().line(line);
      }
    }
  }

  static void write(Path file, String text) throws IOException {
    Files.writeString(file, text);
  }

  static void delete(Path... files) throws IOException {
    for (Path file : files) {
      Files.deleteIfExists(file);
    }
  }

  private void writeLeft() throws IOException {
    StringBuilder text = new StringBuilder();
    left.forEach((line, times) -> text.append(RemainderLine.times(line, times)).append('\n'));
    write(leftover, text.toString());
  }

  @Override
  public void close() throws IOException, SQLException {
    if (named.isPresent()) {
      named.get().close();
    } else if (Files.exists(leftover.resolveSibling(""))) {
      writeLeft();
    }
    if (bundles.isPresent()) {
      bundles.get().close();
    }
  }
}
