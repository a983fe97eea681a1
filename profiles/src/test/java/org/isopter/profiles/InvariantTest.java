package org.isopter.profiles;

import static java.nio.charset.StandardCharsets.UTF_8;
import static java.util.stream.Collectors.toMap;
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
import org.isopter.profiles.InvariantPairs.Found;
import org.isopter.profiles.InvariantPairs.Pair;
import org.isopter.profiles.artefact.Artefacts;
import org.isopter.profiles.compiled.CompiledValidator;
import org.isopter.profiles.compiled.Verdict;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Each invariant has an observation that keeps it and one that breaks it and nothing else. Both are
 * made from the seed in the table, which also says what was changed and what the validator says;
 * {@code -Dgolden=update} looks for seeds anew and rewrites it.
 */
class InvariantTest {

  private static final Path TABLE = Path.of("src/test/resources/invariants.tsv");
  private static final String HEAD = "invariant\tseed\tchanged\tmessage\n";
  private static final Pattern TAB = Pattern.compile("\t");

  private static final ProfileValidator VALIDATOR = ProfileValidator.standard();
  private static final CompiledValidator COMPILED = new CompiledValidator(Catalogue.standard());
  private static final InvariantPairs PAIRS = new InvariantPairs(Catalogue.standard());

  /** A row of the table. */
  private record Row(long seed, String changed, String message) {

    static Row of(Found found) {
      Pair pair = found.pair();
      return new Row(
          found.seed(), Changes.of(pair.pass(), pair.fail()), found.message().toString());
    }

    String line(String key) {
      return key + "\t" + seed + "\t" + changed + "\t" + message + "\n";
    }
  }

  @BeforeAll
  static void writeAnewOnRequest() throws IOException {
    if (Golden.isUpdate()) {
      StringBuilder table = new StringBuilder(HEAD);
      for (String key : new TreeSet<>(invariants())) {
        table.append(Row.of(PAIRS.search(key, VALIDATOR)).line(key));
      }
      Files.writeString(TABLE, table, UTF_8);
    }
  }

  @Test
  void everyInvariantHasItsRow() throws IOException {
    assertEquals(new TreeSet<>(invariants()), new TreeSet<>(rows().keySet()));
  }

  @TestFactory
  Stream<DynamicTest> keepsOrBreaksExactlyTheOne() throws IOException {
    Map<String, Row> rows = rows();
    Map<String, Pair> pairs = new TreeMap<>();
    rows.forEach((key, row) -> pairs.put(key, PAIRS.pair(key, row.seed()).orElseThrow()));
    Map<String, List<String>> said =
        ManyAtOnce.said(
            VALIDATOR,
            pairs.entrySet().stream()
                .collect(toMap(Map.Entry::getKey, pair -> pair.getValue().fail().toString())));
    return rows.entrySet().stream()
        .map(
            row ->
                DynamicTest.dynamicTest(
                    row.getKey(),
                    () -> check(row.getValue(), pairs.get(row.getKey()), said.get(row.getKey()))));
  }

  private static void check(Row row, Pair pair, List<String> said) {
    assertEquals(row.changed(), Changes.of(pair.pass(), pair.fail()));
    // That it says this and no more is what it says of the other as well, but for one change.
    assertEquals(List.of(row.message()), said);
    assertEquals(List.of(row.message()), compiled(pair.fail().toString()));
    assertEquals(new Verdict.Valid(), COMPILED.judge(pair.pass().toString()));
  }

  /** Returns what the compiled checks say, which must be able to decide. */
  private static List<String> compiled(String json) {
    return ((Verdict.Invalid) COMPILED.judge(json))
        .breaches().stream()
            .map(breach -> "ERROR " + breach.path() + ": " + breach.text())
            .toList();
  }

  /** Those of the panel are tried on an examination, not on a finding. */
  private static Set<String> invariants() {
    Set<String> keys = new TreeSet<>(Artefacts.of(Catalogue.standard()).rules().keySet());
    keys.removeIf(key -> key.startsWith("examination-"));
    return keys;
  }

  private static Map<String, Row> rows() throws IOException {
    Map<String, Row> rows = new TreeMap<>();
    List<String> lines = Files.readAllLines(TABLE, UTF_8);
    for (String line : lines.subList(1, lines.size())) {
      List<String> cells = TAB.splitAsStream(line).toList();
      rows.put(cells.get(0), new Row(Long.parseLong(cells.get(1)), cells.get(2), cells.get(3)));
    }
    return rows;
  }
}
