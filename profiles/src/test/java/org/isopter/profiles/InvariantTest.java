package org.isopter.profiles;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.profiles.artefact.Artefacts;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** Each invariant has an observation that keeps it and one that breaks it and nothing else. */
class InvariantTest {

  private static final Path FOLDER = Path.of("src/test/resources/invariants");
  private static final Path MESSAGES = FOLDER.resolve("messages.tsv");
  private static final Pattern TAB = Pattern.compile("\t");
  private static final JsonMapper JSON =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  private final ProfileValidator validator = Validators.standard();

  @Test
  void everyInvariantHasItsPair() throws IOException {
    if (Golden.isUpdate()) {
      update();
    }
    TreeSet<String> wanted = new TreeSet<>(invariants());
    assertEquals(wanted, new TreeSet<>(messages().keySet()));
  }

  @TestFactory
  Stream<DynamicTest> keepsOrBreaksExactlyTheOne() throws IOException {
    return messages().entrySet().stream()
        .flatMap(
            entry ->
                Stream.of(
                    DynamicTest.dynamicTest(
                        entry.getKey() + "-pass",
                        () -> assertEquals(List.of(), validate(entry.getKey() + "-pass"))),
                    DynamicTest.dynamicTest(
                        entry.getKey() + "-fail",
                        () ->
                            assertEquals(
                                List.of(entry.getValue()), validate(entry.getKey() + "-fail")))));
  }

  private List<String> validate(String name) throws IOException {
    String json = Files.readString(FOLDER.resolve(name + ".json"), UTF_8);
    return validator.validate(json).stream().map(ValidationMessage::toString).toList();
  }

  private static Set<String> invariants() {
    return Artefacts.of(Catalogue.standard()).invariants().keySet();
  }

  private static Map<String, String> messages() throws IOException {
    Map<String, String> messages = new TreeMap<>();
    for (String line : Files.readAllLines(MESSAGES, UTF_8)) {
      List<String> cells = TAB.splitAsStream(line).toList();
      messages.put(cells.get(0), cells.get(1));
    }
    return messages;
  }

  private void update() throws IOException {
    Map<String, String> files = new TreeMap<>();
    StringBuilder messages = new StringBuilder();
    new InvariantPairs(Catalogue.standard(), validator)
        .all()
        .forEach(
            (key, pair) -> {
              files.put(key + "-pass.json", JSON.writeValueAsString(pair.pass()) + "\n");
              files.put(key + "-fail.json", JSON.writeValueAsString(pair.fail()) + "\n");
              messages.append(key).append('\t').append(pair.message()).append('\n');
            });
    Golden.check(FOLDER, files);
    Files.writeString(MESSAGES, messages, UTF_8);
  }
}
