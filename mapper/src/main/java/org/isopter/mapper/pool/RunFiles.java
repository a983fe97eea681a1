package org.isopter.mapper.pool;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;

/** The files of a run that grow line by line beside the tables. */
final class RunFiles implements AutoCloseable {

  private final BufferedWriter left;
  private final Optional<Path> elsewhere;
  private final Optional<BufferedWriter> whole;
  private final Optional<BufferedWriter> bundles;
  private final boolean identified;

  private RunFiles(
      BufferedWriter left,
      Optional<Path> elsewhere,
      Optional<BufferedWriter> whole,
      Optional<BufferedWriter> bundles,
      boolean identified) {
    this.left = left;
    this.elsewhere = elsewhere;
    this.whole = whole;
    this.bundles = bundles;
    this.identified = identified;
  }

  static RunFiles open(PoolFolder folder, PoolPlan plan) throws IOException {
    BufferedWriter left = writer(folder.file("leftover.ndjson"));
    Optional<BufferedWriter> bundles =
        plan.bundles() ? Optional.of(writer(folder.file("bundles.ndjson"))) : Optional.empty();
    Optional<Path> elsewhere = plan.wholeLeft().map(Path::toAbsolutePath);
    Optional<BufferedWriter> whole =
        elsewhere.isPresent() ? Optional.of(writer(aside(elsewhere.get()))) : Optional.empty();
    return new RunFiles(left, elsewhere, whole, bundles, plan.deidentifier().isEmpty());
  }

  /** What is not finished lies beside its place; a device or a pipe has no other place. */
  private static Path aside(Path file) throws IOException {
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      return file;
    }
    Files.createDirectories(file.resolveSibling(""));
    return file.resolveSibling("." + file.getFileName() + ".part");
  }

  /** Gives the file that lies elsewhere its name, once all are closed. */
  void commit() throws IOException {
    if (elsewhere.isPresent() && !aside(elsewhere.get()).equals(elsewhere.get())) {
      Path file = elsewhere.get();
      Files.move(aside(file), file, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  /** Takes away what lies elsewhere and was not finished. */
  void discard() throws IOException {
    if (elsewhere.isPresent() && !aside(elsewhere.get()).equals(elsewhere.get())) {
      Files.deleteIfExists(aside(elsewhere.get()));
    }
  }

  void left(Remainder one) throws IOException {
    line(left, RemainderLine.of(one, identified));
    if (whole.isPresent()) {
      line(whole.get(), RemainderLine.whole(one));
    }
  }

  void bundle(Optional<String> bundle) throws IOException {
    if (bundles.isPresent() && bundle.isPresent()) {
      line(bundles.get(), bundle.get());
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

  private static void line(BufferedWriter writer, String text) throws IOException {
    writer.write(text);
    writer.write('\n');
  }

  private static BufferedWriter writer(Path file) throws IOException {
    return Files.newBufferedWriter(file, UTF_8);
  }

  @Override
  public void close() throws IOException {
    left.close();
    if (whole.isPresent()) {
      whole.get().close();
    }
    if (bundles.isPresent()) {
      bundles.get().close();
    }
  }
}
