package org.isopter.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.record.PlainJson;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.note.NoteReader;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.json.JsonMapper;

final class SheetLawsTest {

  private static final int FORMS = 500;
  private static final JsonMapper DIGITS =
      JsonMapper.builder().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS).build();

  @Test
  void savesTheBytesThatANoteOfTheFieldsGives() throws IOException {
    Random random = new Random(314159);
    Sheet sheet = new Sheet();
    RecordReader reader = new RecordReader(Catalogue.standard());
    List<Map<String, String>> drawn = new ArrayList<>();
    int saved = 0;
    for (int i = 0; i < FORMS; i++) {
      String form = Forms.drawn(random);
      Map<String, Object> view = sheet.read(form);
      drawn.add(Map.of("form", form, "view", PlainJson.of(view), "fhir", sheet.fhir(form)));
      assertEquals(view.containsKey("record"), !sheet.fhir(form).isEmpty());
      if (view.get("record") instanceof String record) {
        Exam exam = reader.read(record, RecordFormat.JSON).orThrow();
        Exam typed = NoteReader.exam(exam.header(), (String) view.get("note")).orThrow();
        assertEquals(new RecordWriter().write(typed, RecordFormat.JSON), record);
        assertEquals(
            DIGITS.readTree(FhirWriter.of(BundleKind.COLLECTION).write(exam)),
            DIGITS.readTree(sheet.fhir(form)));
        saved++;
      }
    }
    assertTrue(saved > FORMS / 10, "only " + saved + " of the forms gave a record");
    // What the compiled script has to say of the same forms, for whoever has a browser.
    Path target = Files.createDirectories(Path.of("target"));
    Files.writeString(target.resolve("forms.json"), PlainJson.of(Map.of("drawn", drawn)));
  }
}
