package org.isopter.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every page and every file that a page names with a link is there. */
class LinksTest {

  private static final Pattern LINK = Pattern.compile("\\]\\((?!https?:|mailto:|#)([^)#\\s]+)");

  @Test
  void leadSomewhere() throws IOException {
    Set<String> broken =
        pages()
            .flatMap(
                page ->
                    LINK.matcher(Texts.of(page))
                        .results()
                        .map(link -> link.group(1))
                        .filter(target -> !Files.exists(page.resolveSibling(target)))
                        .map(target -> page + " to " + target))
            .collect(Collectors.toCollection(TreeSet::new));
    assertEquals(Set.of(), broken);
  }

  /** The pages of the docs are found from the first page, so that none is written for nobody. */
  @Test
  void reachEveryPage() throws IOException {
    Set<Path> reached = new TreeSet<>();
    follow(Path.of("README.md"), reached);
    Set<Path> alone = new TreeSet<>(pages().toList());
    alone.removeAll(reached);
    assertEquals(Set.of(), alone);
  }

  private static void follow(Path page, Set<Path> reached) {
    if (!page.toString().endsWith(".md") || !Files.exists(page) || !reached.add(page)) {
      return;
    }
    LINK.matcher(Texts.of(page))
        .results()
        .forEach(link -> follow(beside(page, link.group(1)), reached));
  }

  private static Path beside(Path page, String target) {
    Path absolute = page.toAbsolutePath().resolveSibling(target).normalize();
    return Path.of("").toAbsolutePath().relativize(absolute);
  }

  private static Stream<Path> pages() throws IOException {
    List<Path> top = List.of(Path.of("README.md"), Path.of("DEVELOPERS.md"));
    try (Stream<Path> docs = Files.walk(Path.of("docs"))) {
      List<Path> found = docs.filter(file -> file.toString().endsWith(".md")).toList();
      return Stream.concat(top.stream(), found.stream());
    }
  }
}
