package org.isopter.mapper.foreign;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.foreign.vocabulary.ForeignRule;
import org.isopter.mapper.foreign.vocabulary.ForeignRules;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;

/**
 * Writes files of observations, one a line, in the shapes of our own examples of foreign records:
 * the same seed gives the same file. Each person has a visit of eight observations.
 */
public final class ForeignLines {

  private static final int OF_A_VISIT = 8;
  private static final OffsetDateTime START = OffsetDateTime.parse("2026-01-01T08:00:00+01:00");
  private static final String TIME = "2026-03-02T09:30:00+01:00";
  private static final String PERSON = "p-17";
  private static final String FIGURE = "\"value\":14,";

  private final List<String> shapes = shapes();
  private final Random random;

  private ForeignLines(long seed) {
    this.random = new Random(seed);
  }

  /** Writes a file of so many lines. */
  public static void write(Path file, int lines, long seed) throws IOException {
    ForeignLines made = new ForeignLines(seed);
    try (BufferedWriter out = Files.newBufferedWriter(file, UTF_8)) {
      for (int i = 0; i < lines; i++) {
        out.write(made.line(i));
        out.write('\n');
      }
    }
  }

  private String line(int number) {
    int person = number / OF_A_VISIT;
    return shapes
        .get(random.nextInt(shapes.size()))
        .replace(PERSON, "p-" + person)
        .replace(TIME, START.plusMinutes(person).toString())
        .replace(FIGURE, "\"value\":" + (8 + random.nextInt(30)) + ",");
  }

  private static List<String> shapes() {
    List<String> shapes = new ArrayList<>();
    for (ForeignRule rule : ForeignRules.all()) {
      add(RawJson.OWN.read(rule.takes().json()).orThrow(), shapes);
      add(RawJson.OWN.read(rule.refuses().json()).orThrow(), shapes);
    }
    return List.copyOf(shapes);
  }

  private static void add(Raw document, List<String> shapes) {
    if (Neighbours.type(document).equals("Observation")) {
      shapes.add(shape((Raw.Obj) document));
    }
    for (Raw.Obj entry : document.objects("entry")) {
      entry.object("resource").ifPresent(resource -> add(resource, shapes));
    }
  }

  /** Whoever it is about and whenever it was: the places of both are known afterwards. */
  private static String shape(Raw.Obj observation) {
    Raw person = new Raw.Obj(Map.of("identifier", new Raw.Obj(Map.of("value", Raw.of(PERSON)))));
    return RawJson.write(
        observation.with("subject", person).with("effectiveDateTime", Raw.of(TIME)));
  }
}
