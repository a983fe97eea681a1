package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import org.isopter.task.io.Streams;

/** Runs the usual commands once in one JVM, which then knows the classes that they need. */
final class CdsTraining {

  private CdsTraining() {}

  /**
   * Checks a record, turns it into FHIR and back, and says nothing.
   *
   * @param args the file of a record
   */
  public static void main(String[] args) {
    String file = args[0];
    run(InputStream.nullInputStream(), "check", file);
    byte[] bundle = run(InputStream.nullInputStream(), "to-fhir", file);
    run(new ByteArrayInputStream(bundle), "from-fhir", "-", "--input-format", "json");
    run(InputStream.nullInputStream(), "--help");
  }

  private static byte[] run(InputStream in, String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PrintStream words = new PrintStream(OutputStream.nullOutputStream(), false, UTF_8);
    Main.run(new Streams(in, new PrintStream(out, false, UTF_8), words), args);
    return out.toByteArray();
  }
}
