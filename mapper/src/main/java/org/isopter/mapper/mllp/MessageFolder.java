package org.isopter.mapper.mllp;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import org.isopter.mapper.io.OwnerFile;
import org.isopter.mapper.io.Passing;
import org.isopter.mapper.io.Sha256;
import org.isopter.mapper.v2.V2Header;

/**
 * A folder with a file for each message, which its owner alone can read. A file is named by a
 * digest of who sent the message and of its control id, is written aside and is on the disk before
 * it has its name. One process at a time receives into a folder.
 */
public final class MessageFolder implements Closeable {

  private static final String ENDING = ".hl7";
  private static final String PART = ".part";
  private static final String LOCK = ".receiving";

  /** Hexadecimal digits of a name: 128 bits. */
  private static final int NAME = 32;

  private final Path folder;
  private final Path lockFile;
  private final FileChannel lock;

  private MessageFolder(Path folder, Path lockFile, FileChannel lock) {
    this.folder = folder;
    this.lockFile = lockFile;
    this.lock = lock;
  }

  /**
   * Opens a folder, which is made where there is none; what a killed process left half is deleted.
   *
   * @throws FileSystemException when another process receives into it
   * @throws IOException when it cannot be written
   */
  public static MessageFolder at(Path folder) throws IOException {
    Files.createDirectories(folder);
    Path lockFile = folder.resolve(LOCK);
    FileChannel lock =
        FileChannel.open(lockFile, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    if (!isFree(lock)) {
      lock.close();
      throw new FileSystemException(folder.toString(), null, "messages are received there already");
    }
    try (DirectoryStream<Path> parts = Files.newDirectoryStream(folder, ".*" + ENDING + PART)) {
      for (Path part : parts) {
        Files.deleteIfExists(part);
      }
    }
    return new MessageFolder(folder, Passing.add(lockFile), lock);
  }

  private static boolean isFree(FileChannel lock) throws IOException {
    try {
      FileLock held = lock.tryLock();
      return held != null;
    } catch (OverlappingFileLockException held) {
      return false;
    }
  }

  /** Returns what keeps messages in this folder. */
  Inbox inbox() {
    return this::keep;
  }

  private synchronized KeptMessage keep(V2Header header, byte[] message) throws IOException {
    String name = name(header);
    Path file = folder.resolve(name);
    if (Files.exists(file)) {
      sync();
      boolean same = Arrays.equals(Files.readAllBytes(file), message);
      return new KeptMessage(same ? KeptMessage.State.BEFORE : KeptMessage.State.OTHER, file);
    }
    Path aside = Passing.add(folder.resolve("." + name + PART));
    try {
      Files.deleteIfExists(aside);
      OwnerFile.create(aside);
      write(aside, message);
      Passing.rename(aside, file);
    } finally {
      Passing.delete(aside);
    }
    sync();
    return new KeptMessage(KeptMessage.State.NEW, file);
  }

  private static void write(Path file, byte[] message) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      ByteBuffer bytes = ByteBuffer.wrap(message);
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
      channel.force(true);
    }
  }

  /** A name is on the disk when its folder is; where a folder cannot be opened, it is at once. */
  private void sync() throws IOException {
    if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
        channel.force(true);
      }
    }
  }

  private static String name(V2Header header) {
    String key =
        header.component(3, 1)
            + '|'
            + header.component(3, 2)
            + '|'
            + header.component(4, 1)
            + '|'
            + header.component(4, 2)
            + '|'
            + header.controlId();
    return Sha256.hex(key).substring(0, NAME) + ENDING;
  }

  @Override
  public void close() throws IOException {
    lock.close();
    Passing.delete(lockFile);
  }
}
