package org.isopter.mapper.record.schema;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.isopter.mapper.Goldens;
import org.isopter.mapper.record.Mutation;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.mapper.record.Scalars;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.value.Fault;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** The published schema is up to date, and refuses nothing that the reader accepts. */
class RecordSchemaTest {

  private static final JsonMapper JSON =
      JsonMapper.builder().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS).build();

  private final RecordReader reader = new RecordReader(Catalogue.standard());
  private final RecordSchema schema = new RecordSchema(Catalogue.standard());

  @Test
  void thePublishedSchemaIsUpToDate() {
    String text = JSON.writerWithDefaultPrettyPrinter().writeValueAsString(published());
    Goldens.check(
        Path.of("../docs/record.schema.json"), text.replace(System.lineSeparator(), "\n") + "\n");
  }

  private static ObjectNode published() {
    return RecordSchema.of(Catalogue.standard());
  }

  @Test
  void neverRefusesWhatTheReaderAccepts() {
    long seed = new SecureRandom().nextLong();
    SplittableRandom random = new SplittableRandom(seed);
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), random);
    RecordWriter writer = new RecordWriter();
    int both = 0;
    int readerAlone = 0;
    for (int i = 0; i < 600; i++) {
      ObjectNode tree = writer.tree(exams.next());
      new Mutation(random).change(tree);
      boolean read = reader.read(JSON.writeValueAsString(tree), RecordFormat.JSON).isOk();
      List<Fault> faults = schema.check(tree);
      assertTrue(faults.isEmpty() || !read, () -> "seed " + seed + "\n" + faults + "\n" + tree);
      both += !faults.isEmpty() ? 1 : 0;
      readerAlone += faults.isEmpty() && !read ? 1 : 0;
    }
    int refused = both + readerAlone;
    assertTrue(refused > 300, "only " + refused + " mutations were refused");
    assertTrue(both > refused * 3 / 4, both + " of " + refused + " are refused by the schema");
  }

  @Test
  void saysWhatItRefusesInFourWords() {
    JsonNode tree =
        JSON.readTree(
            """
            {"isopter": 1, "record": {"id": 17}, "subject": {"name": "Ada"},
             "performed": "2026-03-02", "status": "done",
             "findings": {"intraocular-pressure": {"right": [{"value": 14, "colour": "red"}]}}}
            """);
    List<String> reported = new ArrayList<>();
    schema.check(tree).forEach(fault -> reported.add(fault.toString()));
    assertEquals(
        List.of(
            "record.id: saw 17, wanted the type string",
            "performed: saw \"2026-03-02\", wanted text of the form " + Scalars.TIME,
            "status: saw \"done\", wanted one of preliminary, final, amended, entered-in-error",
            "findings.intraocular-pressure.right[0].value: saw 14, wanted the type string",
            "findings.intraocular-pressure.right[0]: saw the unknown key colour,"
                + " wanted a key that the format has"),
        reported);
  }
}
