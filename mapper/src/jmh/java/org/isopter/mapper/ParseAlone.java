package org.isopter.mapper;

import static java.nio.charset.StandardCharsets.UTF_8;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.IParser;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Function;
import tools.jackson.databind.json.JsonMapper;

/** The baseline in a process of its own: every line parsed by a general library, and let go. */
public final class ParseAlone {

  private ParseAlone() {}

  /**
   * Runs.
   *
   * @param arguments {@code hapi} or {@code jackson}, and the file
   */
  public static void main(String... arguments) throws IOException {
    Function<String, ?> parse = arguments[0].equals("hapi") ? hapi() : jackson();
    try (BufferedReader in = Files.newBufferedReader(Path.of(arguments[1]), UTF_8)) {
      long parsed = 0;
      for (String line = in.readLine(); line != null; line = in.readLine()) {
        parsed += parse.apply(line) == null ? 0 : 1;
      }
      if (parsed == 0) {
        throw new IllegalStateException("nothing was parsed");
      }
    }
  }

  private static Function<String, ?> hapi() {
    IParser parser = FhirContext.forR4Cached().newJsonParser();
    return parser::parseResource;
  }

  private static Function<String, ?> jackson() {
    return new JsonMapper()::readTree;
  }
}
