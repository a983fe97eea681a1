package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The pictures that the documentation shows. */
final class PicturesTest {

  private static final Path FOLDER = Path.of("docs", "pictures");
  private static final int LARGEST = 150_000;
  private static final Pattern PICTURE =
      Pattern.compile("<svg .*?aria-labelledby=\"isopter-(\\w+)-title.*?</svg>\n", Pattern.DOTALL);

  @Test
  void areThoseOfAPageAsItIsNow() throws IOException {
    String note =
        "pupils R 4 mm L 2.5 mm dim; RAPD L 2+; EOM R abduction -2, rest full; EOM L full;"
            + " VF R full; VF L ST absent, IT reduced; blind spot L enlarged;"
            + " disc L swollen, blurred all round, haemorrhage at 3 o'clock; CDR v R 0.3; CDR h R 0.3";
    Path record = Path.of("target", "pictures.yaml");
    Files.createDirectories(record.getParent());
    String performed = "2026-03-02T09:30:00+01:00";
    Files.writeString(
        record,
        Run.of("note", note, "--subject", "p-1", "--id", "pictures", "--performed", performed)
            .ok()
            .out());
    Matcher pictures =
        PICTURE.matcher(Run.of("summary", record.toString(), "--format", "html").ok().out());
    int found = 0;
    while (pictures.find()) {
      isCurrent(FOLDER.resolve(pictures.group(1) + ".svg"), pictures.group());
      found++;
    }
    assertEquals(4, found);
  }

  private static void isCurrent(Path file, String picture) throws IOException {
    if ("update".equals(System.getProperty("golden"))) {
      Files.createDirectories(FOLDER);
      Files.writeString(file, picture, UTF_8);
    }
    assertEquals(picture, Files.readString(file, UTF_8), "rewrite it with -Dgolden=update");
    String summary = Files.readString(Path.of("docs", "summary.md"), UTF_8);
    assertTrue(summary.contains("(pictures/" + file.getFileName() + ")"), file.toString());
  }

  /** The pictures of a browser are small, and each stands on a page. */
  @Test
  void areSmallAndShown() throws IOException {
    String pages =
        Files.readString(Path.of("docs", "sheet.md"), UTF_8)
            + Files.readString(Path.of("docs", "summary.md"), UTF_8);
    try (Stream<Path> files = Files.list(FOLDER)) {
      for (Path file : files.toList()) {
        assertTrue(pages.contains("(pictures/" + file.getFileName() + ")"), file.toString());
        assertTrue(Files.size(file) <= LARGEST, file.toString());
      }
    }
  }
}
