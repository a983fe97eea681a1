package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Code;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The pages of the catalogue. */
class CatalogueTest {

  private static final Path PAGE = Path.of("docs", "catalogue.md");

  @Test
  void thePageIsCurrent() throws IOException {
    String page = Run.of("catalogue", "--format", "markdown").ok().out();
    if ("update".equals(System.getProperty("golden"))) {
      Files.writeString(PAGE, page, UTF_8);
    }
    assertEquals(page, Files.readString(PAGE, UTF_8), "rewrite it with -Dgolden=update");
  }

  @Test
  void everyFormShowsEveryFindingAndEveryCode() {
    String markdown = Run.of("catalogue", "--format", "markdown").ok().out();
    JsonNode json =
        JsonMapper.shared().readTree(Run.of("catalogue", "--format", "json").ok().out());
    assertEquals(Catalogue.standard().all().size(), json.size());
    for (Finding<?> finding : Catalogue.standard().all()) {
      String text = Run.of("catalogue", finding.id()).ok().out();
      assertTrue(text.startsWith(finding.id() + "\n"), text);
      assertTrue(markdown.contains("\n## " + finding.id() + "\n"), finding.id());
      for (Code code : finding.codes().all()) {
        assertTrue(text.contains(code.code()), text);
        assertTrue(markdown.contains("| " + code.code() + " |"), code.code());
      }
    }
  }

  @Test
  void theListHasALineForEachFinding() {
    assertEquals(Catalogue.standard().all().size(), Run.of("catalogue").ok().out().lines().count());
  }
}
