package org.isopter.mapper.io;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file is there whole or not at all. */
class AtomicFileTest {

  @TempDir Path folder;

  /** Starts a file, says so, and waits to be ended. */
  static final class Writer {

    private Writer() {}

    /** Writes into the file that is named. */
    public static void main(String[] args) throws Exception {
      try (AtomicFile file = AtomicFile.at(Path.of(args[0]))) {
        file.write("half".getBytes(UTF_8));
        file.flush();
        Files.writeString(Path.of(args[0] + ".started"), "");
        Thread.sleep(600_000);
      }
    }
  }

  @Test
  void takesThePlaceOfAnOlderFileOnlyWhenItIsComplete() throws IOException {
    Path target = folder.resolve("a.txt");
    Files.writeString(target, "old");
    try (AtomicFile file = AtomicFile.at(target)) {
      file.write("new".getBytes(UTF_8));
      assertEquals("old", Files.readString(target));
      file.commit();
    }
    assertEquals("new", Files.readString(target));
    assertEquals(List.of("a.txt"), names());
  }

  @Test
  void leavesNothingBehindWhereItIsNotCommitted() throws IOException {
    try (AtomicFile file = AtomicFile.at(folder.resolve("a.txt"))) {
      file.write("new".getBytes(UTF_8));
    }
    assertEquals(List.of(), names());
  }

  @Test
  void isReadByItsOwnerAloneWhereThatIsAsked() throws IOException {
    Path target = folder.resolve("a.txt");
    Files.writeString(target, "old");
    try (AtomicFile file = AtomicFile.forOwner(target)) {
      file.line("é");
      file.commit();
    }
    assertEquals("é\n", Files.readString(target));
    if (Files.getFileStore(folder).supportsFileAttributeView("posix")) {
      String permissions = PosixFilePermissions.toString(Files.getPosixFilePermissions(target));
      assertEquals("rw-------", permissions);
    }
  }

  @Test
  void namesTheFileThatCannotBeWritten() {
    Path target = folder.resolve("gone");
    assertTrue(target.toFile().mkdirs());
    UnwritableException failed =
        assertThrows(UnwritableException.class, () -> AtomicFile.write(target.resolve("."), ""));
    assertTrue(
        String.valueOf(failed.getMessage()).startsWith("cannot write " + target), failed::toString);
  }

  @Test
  void leavesNothingBehindWhereTheProcessIsAskedToEnd() throws Exception {
    Path target = folder.resolve("a.txt");
    String classes = location(AtomicFile.class) + File.pathSeparator + location(Writer.class);
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                classes,
                Writer.class.getName(),
                target.toString())
            .redirectErrorStream(true)
            .start();
    while (process.isAlive() && !Files.exists(folder.resolve("a.txt.started"))) {
      Thread.sleep(20);
    }
    assertTrue(process.isAlive(), () -> said(process));
    process.destroy();
    process.waitFor();
    assertEquals(List.of("a.txt.started"), names());
  }

  private static String said(Process process) {
    try {
      return new String(process.getInputStream().readAllBytes(), UTF_8);
    } catch (IOException closed) {
      return String.valueOf(closed);
    }
  }

  private static String location(Class<?> of) throws Exception {
    return Path.of(of.getProtectionDomain().getCodeSource().getLocation().toURI()).toString();
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> String.valueOf(file.getFileName())).sorted().toList();
    }
  }
}
