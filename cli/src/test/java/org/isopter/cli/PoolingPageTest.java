package org.isopter.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.StringJoiner;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.mapper.store.PoolTables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every question on the page is asked of the pool that the page makes, and answered as shown. */
class PoolingPageTest {

  private static final Path PAGE = Path.of("docs", "pooling.md");

  /** A question, and behind it the table that answers it. */
  private static final Pattern QUESTION =
      Pattern.compile("```sql\\n(.*?)```\\n((\\n\\|[^\\n]*(\\n\\|[^\\n]*)*\\n)?)", Pattern.DOTALL);

  @TempDir Path folder;

  @Test
  void everyQuestionIsAnsweredAsShown() throws IOException, SQLException {
    String lines = folder.resolve("invented.ndjson").toString();
    String pool = folder.resolve("invented").toString();
    Run.of("generate", "--persons", "200", "--seed", "7", "--output", lines).ok();
    Run.of("pool", lines, "--key-file", "docs/key-for-the-demo.txt", "--output", pool).ok();
    String page = Files.readString(PAGE);
    try (PoolTables tables = PoolTables.open(Path.of(pool))) {
      String answered = answered(page, tables);
      if ("update".equals(System.getProperty("golden"))) {
        Files.writeString(PAGE, answered);
      }
      assertEquals(Files.readString(PAGE), answered);
    }
    assertTrue(QUESTION.matcher(page).results().count() >= 5, "hardly a question was found");
  }

  private static String answered(String page, PoolTables tables) throws SQLException {
    Matcher questions = QUESTION.matcher(page);
    StringBuilder answered = new StringBuilder();
    int done = 0;
    for (MatchResult question : questions.results().toList()) {
      answered.append(page.substring(done, question.start()));
      String sql = question.group(1);
      answered.append("```sql\n").append(sql).append("```\n\n").append(table(tables.ask(sql)));
      done = question.end();
    }
    return answered.append(page.substring(done)).toString();
  }

  private static String table(PoolTables.Rows rows) {
    StringBuilder table = new StringBuilder(row(rows.columns()));
    table.append(row(Collections.nCopies(rows.columns().size(), "---")));
    for (List<Optional<Object>> cells : rows.cells()) {
      table.append(row(cells.stream().map(cell -> cell.map(Object::toString).orElse("")).toList()));
    }
    return table.toString();
  }

  private static String row(List<String> cells) {
    StringJoiner row = new StringJoiner(" | ", "| ", " |\n");
    cells.forEach(row::add);
    return row.toString();
  }
}
