package org.isopter.mapper.view;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.hl7.fhir.exceptions.FHIRException;
import org.hl7.fhir.r5.model.Base;
import org.hl7.fhir.utilities.json.model.JsonObject;
import org.hl7.fhir.utilities.json.parser.JsonParser;
import org.isopter.mapper.foreign.Foreign;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.profiles.artefact.view.View;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The engine that runs our views passes tests in the format that SQL on FHIR has for engines, so
 * its rows can be believed: our own, one for each thing that our views use, and the published ones
 * where they lie beside the repository.
 */
class ConformanceSuiteTest {

  private static final Path OWN = Path.of("src", "test", "resources", "views");

  /** A constant as an index: the only thing it cannot do, and no view of ours needs it. */
  private static final TreeSet<String> CANNOT =
      new TreeSet<>(List.of("constant.json: integer constant"));

  private static final int PUBLISHED = 118;

  /** The functions and the types that a path of a view names. */
  private static final Pattern USED = Pattern.compile("[a-zA-Z]+\\(|ofType\\(\\w+\\)");

  private static final Pattern TEXT = Pattern.compile("'[^']*'");

  private final ViewEngine engine = new ViewEngine(Definitions.r5());
  private final TreeSet<String> failed = new TreeSet<>();
  private int run;

  @Test
  void theEnginePassesOurOwnTests() throws IOException {
    runAll(OWN);
    assertEquals(new TreeSet<>(), failed);
    assertTrue(run >= 20, "only " + run + " tests");
  }

  @Test
  void theEnginePassesThePublishedTests() throws IOException {
    Optional<Path> suite = Foreign.published().map(folder -> folder.resolve("sql-on-fhir"));
    if (suite.isPresent()) {
      runAll(suite.orElseThrow());
      assertEquals(CANNOT, failed);
      assertEquals(PUBLISHED, run);
    }
  }

  /** A test of the engine that our views do not need is no loss; one that is missing would be. */
  @Test
  void ourTestsTryWhatOurViewsUse() {
    TreeSet<String> tried = new TreeSet<>();
    Foreign.jsonFiles(OWN).forEach(file -> tried.addAll(used(text(file))));
    TreeSet<String> untried = new TreeSet<>();
    View.of(Catalogue.standard()).forEach(view -> untried.addAll(used(view.json())));
    untried.removeAll(tried);
    assertEquals(new TreeSet<>(), untried);
  }

  private static Set<String> used(String json) {
    Set<String> used = new TreeSet<>();
    for (JsonNode path : JsonMapper.shared().readTree(json).findValues("path")) {
      USED.matcher(TEXT.matcher(path.asString()).replaceAll("''"))
          .results()
          .forEach(found -> used.add(found.group()));
    }
    return used;
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private void runAll(Path folder) throws IOException {
    for (Path file : Foreign.jsonFiles(folder)) {
      run(file);
    }
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
