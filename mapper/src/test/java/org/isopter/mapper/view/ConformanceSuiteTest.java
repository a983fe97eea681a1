package org.isopter.mapper.view;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.hl7.fhir.exceptions.FHIRException;
import org.hl7.fhir.r5.model.Base;
import org.hl7.fhir.utilities.json.model.JsonObject;
import org.hl7.fhir.utilities.json.parser.JsonParser;
import org.isopter.mapper.foreign.Foreign;
import org.junit.jupiter.api.Test;

/**
 * The engine that runs our views passes the tests that SQL on FHIR brings along for engines; so its
 * rows can be believed.
 */
class ConformanceSuiteTest {

  /** A constant as an index: the only thing it cannot do, and no view of ours needs it. */
  private static final TreeSet<String> CANNOT =
      new TreeSet<>(List.of("constant.json: integer constant"));

  private static final int TESTS = 118;

  private final ViewEngine engine = new ViewEngine(Definitions.r5());
  private final TreeSet<String> failed = new TreeSet<>();
  private int run;

  @Test
  void theEnginePassesTheSuite() throws IOException {
    Optional<Path> suite = Foreign.folder().map(folder -> folder.resolve("sql-on-fhir"));
    assumeTrue(suite.filter(Files::isDirectory).isPresent(), "the suite is not beside the project");
    for (Path file : Foreign.jsonFiles()) {
      if (file.startsWith(suite.orElseThrow())) {
        run(file);
      }
    }
    assertEquals(CANNOT, failed);
    assertEquals(TESTS, run);
  }

  private void run(Path file) throws IOException {
    if (file.endsWith("manifest.json")) {
      return;
    }
    JsonObject cases = JsonParser.parseObject(Files.readString(file));
    List<Base> resources = new ArrayList<>();
    for (JsonObject resource : cases.getJsonObjects("resources")) {
      resources.add(ViewEngine.resource(JsonParser.compose(resource)));
    }
    for (JsonObject test : cases.getJsonObjects("tests")) {
      run++;
      if (!passes(test, resources)) {
        failed.add(file.getFileName() + ": " + test.asString("title"));
      }
    }
  }

  private boolean passes(JsonObject test, List<Base> resources) {
    try {
      List<Map<String, String>> rows = engine.rows(test.getJsonObject("view"), resources);
      return test.has("expect")
          && sorted(rows).equals(sorted(ViewEngine.rows(test.getJsonArray("expect"))));
    } catch (FHIRException refused) {
      return test.has("expectError");
    }
  }

  /** Rows have no order, and 0.95 and 0.950 are one number. */
  private static List<String> sorted(List<Map<String, String>> rows) {
    return rows.stream().map(ConformanceSuiteTest::plain).map(Map::toString).sorted().toList();
  }

  private static Map<String, String> plain(Map<String, String> row) {
    Map<String, String> plain = new TreeMap<>();
    row.forEach((name, cell) -> plain.put(name, number(cell)));
    return plain;
  }

  private static String number(String cell) {
    return cell.matches("-?[0-9]+[.][0-9]+")
        ? new BigDecimal(cell).stripTrailingZeros().toPlainString()
        : cell;
  }
}
