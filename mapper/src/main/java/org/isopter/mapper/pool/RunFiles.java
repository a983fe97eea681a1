package org.isopter.mapper.pool;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** The files of a run that grow line by line beside the tables. */
final class RunFiles implements AutoCloseable {

  private final BufferedWriter left;
  private final Optional<BufferedWriter> whole;
  private final Optional<BufferedWriter> bundles;
  private final boolean identified;

  private RunFiles(
      BufferedWriter left,
      Optional<BufferedWriter> whole,
      Optional<BufferedWriter> bundles,
      boolean identified) {
    this.left = left;
    this.whole = whole;
    this.bundles = bundles;
    this.identified = identified;
  }

  static RunFiles open(PoolFolder folder, PoolPlan plan) throws IOException {
    BufferedWriter left = writer(folder.file("leftover.ndjson"));
    Optional<BufferedWriter> bundles =
        plan.bundles() ? Optional.of(writer(folder.file("bundles.ndjson"))) : Optional.empty();
    Optional<BufferedWriter> whole =
        plan.wholeLeft().isPresent()
            ? Optional.of(writer(plan.wholeLeft().get()))
            : Optional.empty();
    return new RunFiles(left, whole, bundles, plan.deidentifier().isEmpty());
  }

  void left(Left one) throws IOException {
    line(left, LeftLine.of(one, identified));
    if (whole.isPresent()) {
      line(whole.get(), LeftLine.whole(one));
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
