package org.isopter.mapper.describe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.model.simulate.Cohort;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;

/** The page of a description needs nothing but itself, and its pictures are drawn and named. */
class DescriptionPageTest {

  private static final Pattern PICTURE = Pattern.compile("(?s)<svg .*?</svg\\s*>");

  @TempDir static Path cohort = Path.of("");
  private static String page = "";

  /** Who cannot see a picture hears what it shows. */
  @Test
  void everyPictureHasANameAndARole() throws IOException {
    assertEquals(
        PICTURE.matcher(page).results().count(),
        Pattern.compile("<svg role=\"img\" aria-label=\"[^\"]{5,}\" ")
            .matcher(page)
            .results()
            .count());
    assertEquals(
        PICTURE.matcher(page).results().count(),
        Pattern.compile("viewBox=\"0 0 \\d+ \\d+\"").matcher(page).results().count(),
        "pictures that a narrow page would cut");
    assertTrue(page.contains("prefers-color-scheme:dark") && page.contains("@media print"));
  }

  @Test
  void thePageNeedsNothingElse() throws IOException {
    assertTrue(page.contains("<svg "));
    assertFalse(page.contains("<script"));
    String links = page.replaceAll("xmlns(:xlink)?=\"http://www.w3.org/[^\"]*\"", "");
    assertFalse(links.contains("http"), "a link leads out of the page");
  }

  /** Pictures of one page that share a name would clip each other. */
  @Test
  void noTwoPicturesShareAName() throws IOException {
    List<String> names =
        Pattern.compile(" id=\"([^\"]+)\"")
            .matcher(page)
            .results()
            .map(found -> found.group(1))
            .toList();
    assertTrue(names.size() > 100);
    assertEquals(names.size(), Set.copyOf(names).size());
  }

  /** A browser draws what is well formed; a picture of nothing has axes and no data. */
  @Test
  void everyPictureIsWellFormedAndShowsShapesAndWords() throws Exception {
    List<String> pictures = PICTURE.matcher(page).results().map(MatchResult::group).toList();
    assertTrue(pictures.size() >= 5, "only " + pictures.size() + " pictures");
    for (String picture : pictures) {
      Document drawn =
          DocumentBuilderFactory.newDefaultInstance()
              .newDocumentBuilder()
              .parse(new InputSource(new StringReader(picture)));
      assertTrue(count(drawn, "path", "rect", "polygon", "circle", "line") > 10, picture);
      assertTrue(count(drawn, "text") > 3, picture);
    }
  }

  private static int count(Document drawn, String... names) {
    return Stream.of(names).mapToInt(name -> drawn.getElementsByTagName(name).getLength()).sum();
  }

  @BeforeAll
  static void describeACohort() throws IOException {
    PoolPlan plan = PoolPlan.identified(cohort.resolve("pool"));
    page =
        DescriptionPage.of(
            DescriptionTest.describe(new Cohort(30, 3).exams().map(DescriptionTest::line), plan));
  }
}
