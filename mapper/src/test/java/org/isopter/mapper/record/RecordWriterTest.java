package org.isopter.mapper.record;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.isopter.mapper.Goldens;
import org.isopter.mapper.record.tree.YamlScalar;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.junit.jupiter.api.Test;

/** The reviewed look of a record in each format. */
class RecordWriterTest {

  private static final Path FOLDER = Path.of("src/test/resources/golden/record");

  private final RecordReader reader = new RecordReader(Catalogue.standard());
  private final RecordWriter writer = new RecordWriter();

  @Test
  void writesYamlAsAPersonWould() throws IOException {
    Goldens.check(FOLDER.resolve("written.yaml"), writer.write(exam(), RecordFormat.YAML));
  }

  @Test
  void writesJsonOnLinesOfItsOwn() throws IOException {
    Goldens.check(FOLDER.resolve("written.json"), writer.write(exam(), RecordFormat.JSON));
  }

  @Test
  void writesOneLineForStreams() throws IOException {
    Goldens.check(FOLDER.resolve("written.ndjson"), writer.line(exam()) + "\n");
  }

  @Test
  void quotesOnlyWhatYamlCouldMistake() {
    assertEquals("6/9-2", YamlScalar.of("6/9-2"));
    assertEquals("-1.25 D", YamlScalar.of("-1.25 D"));
    assertEquals("Größe (µm)", YamlScalar.of("Größe (µm)"));
    assertEquals("2026-03-02T09:30:00Z", YamlScalar.of("2026-03-02T09:30:00Z"));
    for (String text :
        new String[] {"no", "Off", "017", "1:30", "~", "- a", "a: b", "a #b", "x,y"}) {
      assertEquals('"' + text + '"', YamlScalar.of(text));
    }
    assertEquals("\"a\\nb \\\"c\\\" \\u2028\"", YamlScalar.of("a\nb \"c\" \u2028"));
  }

  private Exam exam() throws IOException {
    String typed = Files.readString(FOLDER.resolve("typed.yaml"), UTF_8);
    return reader.read(typed, RecordFormat.YAML).orThrow();
  }
}
