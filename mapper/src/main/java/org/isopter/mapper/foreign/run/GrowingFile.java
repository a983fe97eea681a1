package org.isopter.mapper.foreign.run;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;

/** A file of lines that grows beside its target, and takes its name when it is whole. */
final class GrowingFile implements Closeable {

  private final Path target;
  private final FileChannel channel;

  private GrowingFile(Path target, FileChannel channel) {
    this.target = target;
    this.channel = channel;
  }

  /** Opens the part of a target, cut to a size: what a killed run wrote beyond it goes. */
  static GrowingFile open(Path target, long size) throws IOException {
    Optional<Path> folder = Optional.ofNullable(target.toAbsolutePath().getParent());
    if (folder.isPresent()) {
      Files.createDirectories(folder.get());
    }
    FileChannel channel =
        FileChannel.open(part(target), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    channel.truncate(size);
    channel.position(channel.size());
    return new GrowingFile(target, channel);
  }

  /** Returns how many bytes the part of a target holds. */
  static long size(Path target) throws IOException {
    return Files.exists(part(target)) ? Files.size(part(target)) : 0;
  }

  long size() throws IOException {
    return channel.position();
  }

  void lines(List<String> lines) {
    StringBuilder text = new StringBuilder();
    lines.forEach(line -> text.append(line).append('\n'));
    try {
      ByteBuffer bytes = ByteBuffer.wrap(text.toString().getBytes(UTF_8));
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
    } catch (IOException unwritable) {
      throw new UncheckedIOException(unwritable);
    }
  }

  /** Gives the file its name. */
  void finish() throws IOException {
    channel.close();
    Files.move(part(target), target, StandardCopyOption.REPLACE_EXISTING);
  }

  /** Does away with what was written. */
  void discard() throws IOException {
    channel.close();
    Files.deleteIfExists(part(target));
  }

  /** Closes the file; its part stays, for a run to go on with. */
  @Override
  public void close() throws IOException {
    channel.close();
  }

  private static Path part(Path target) {
    return target.resolveSibling(target.getFileName() + ".part");
  }
}
