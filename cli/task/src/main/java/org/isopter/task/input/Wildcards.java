package org.isopter.task.input;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.util.List;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;
import java.util.stream.Stream;

/** Finds the files that a pattern names: {@code *}, {@code ?}, <code>{a,b}</code>, {@code **}. */
final class Wildcards {

  private static final Pattern SIGN = Pattern.compile("[*?\\[{]");

  private Wildcards() {}

  /** Says whether an argument is a pattern; a file that has such a name itself is none. */
  static boolean in(String argument) {
    return SIGN.matcher(argument).find() && !Files.exists(Path.of(argument));
  }

  /** Returns the files by name; none where the pattern is none that can be read. */
  static List<Path> files(String pattern) throws IOException {
    Path base = base(pattern);
    if (!Files.isDirectory(base)) {
      return List.of();
    }
    PathMatcher matcher;
    try {
      matcher = FileSystems.getDefault().getPathMatcher("glob:" + pattern);
    } catch (PatternSyntaxException unreadable) {
      return List.of();
    }
    try (Stream<Path> below = Files.walk(base)) {
      return below
          .map(file -> base.toString().isEmpty() ? Path.of("").relativize(file) : file)
          .filter(file -> matcher.matches(file) && Files.isRegularFile(file))
          .sorted()
          .toList();
    }
  }

  /** Returns the folder above the first part of the pattern that has a sign in it. */
  private static Path base(String pattern) {
    Path base = Path.of(pattern.startsWith("/") ? "/" : "");
    for (Path part : Path.of(pattern)) {
      if (SIGN.matcher(part.toString()).find()) {
        return base;
      }
      base = base.resolve(part);
    }
    return base;
  }
}
