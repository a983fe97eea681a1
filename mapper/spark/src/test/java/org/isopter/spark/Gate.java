package org.isopter.spark;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.apache.hadoop.fs.FSDataInputStream;
import org.apache.hadoop.fs.LocalFileSystem;
import org.apache.hadoop.fs.Path;

/**
 * The local files, one of which is a gate once it is shut: whoever then opens it in the pass that
 * lays documents out is held until it is killed or let go.
 */
public final class Gate extends LocalFileSystem {

  /** The setting that says where the gate's own marks lie. */
  static final String MARKS = "fs.gate.marks";

  /** The file that is held. */
  static final String HELD = "d.ndjson";

  /** It is opened once when lines are counted, and then to be laid out. */
  private static final int WHICH_TIME = 2;

  private static final long LONGEST_SECONDS = 120;

  @Override
  public FSDataInputStream open(Path file, int bufferSize) throws IOException {
    if (file.getName().equals(HELD)) {
      hold(java.nio.file.Path.of(getConf().get(MARKS)));
    }
    return super.open(file, bufferSize);
  }

  private static void hold(java.nio.file.Path marks) throws IOException {
    if (Files.exists(marks.resolve("shut")) && time(marks) == WHICH_TIME) {
      java.nio.file.Path aside = marks.resolve("held.part");
      Files.write(aside, String.valueOf(ProcessHandle.current().pid()).getBytes(UTF_8));
      Files.move(aside, marks.resolve("held"));
      await(marks.resolve("open"), () -> false);
    }
  }

  /** Returns which time it is, from 1: marks are made by one process each, whoever comes first. */
  private static int time(java.nio.file.Path marks) throws IOException {
    int time = 1;
    while (!makes(marks.resolve("time-" + time))) {
      time++;
    }
    return time;
  }

  private static boolean makes(java.nio.file.Path mark) throws IOException {
    try {
      Files.createFile(mark);
      return true;
    } catch (FileAlreadyExistsException taken) {
      return false;
    }
  }

  /** Waits until a file is there, or it will not come any more. */
  static void await(java.nio.file.Path file, BooleanSupplier over) throws IOException {
    long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(LONGEST_SECONDS);
    while (!Files.exists(file) && !over.getAsBoolean()) {
      if (System.nanoTime() > until) {
        throw new IOException(file + " did not come");
      }
      try {
        TimeUnit.MILLISECONDS.sleep(20);
      } catch (InterruptedException stopped) {
        throw new IOException("stopped", stopped);
      }
    }
  }
}
