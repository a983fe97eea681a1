package org.isopter.mapper.foreign;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.mapper.json.Limits;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;

/**
 * Records in the shapes that other systems write: files of our own, and besides those that others
 * published, where their folder lies beside the repository, of which it is no part.
 */
public final class Foreign {

  private static final Path RESOURCES = Path.of("src", "test", "resources", "foreign");

  private Foreign() {}

  /** Returns the folder of our own files. */
  public static Path own() {
    return RESOURCES.resolve("files");
  }

  /** Returns the folder of published files: the one that is named, or the one beside, if any. */
  public static Optional<Path> published() {
    Stream<Path> beside =
        Stream.of("..", "../..").map(up -> Path.of(up, "shared", "foreign").normalize());
    Stream<Path> given = Stream.ofNullable(System.getProperty("foreign.records")).map(Path::of);
    return Stream.concat(given, beside).filter(Files::isDirectory).findFirst();
  }

  /** Returns every JSON file of both folders, our own first. */
  public static List<Path> jsonFiles() {
    return Stream.concat(Stream.of(own()), published().stream())
        .flatMap(folder -> jsonFiles(folder).stream())
        .toList();
  }

  /**
   * Returns the JSON files of a folder and of those in it.
   *
   * @throws IllegalStateException if there is none
   */
  public static List<Path> jsonFiles(Path folder) {
    return files(folder, ".json");
  }

  /** Returns the files of lines in both folders, our own first. */
  static List<Path> lineFiles() {
    return Stream.concat(Stream.of(own()), published().stream())
        .flatMap(folder -> files(folder, ".ndjson").stream())
        .toList();
  }

  private static List<Path> files(Path folder, String ending) {
    try (Stream<Path> files = Files.walk(folder)) {
      List<Path> found = files.filter(file -> file.toString().endsWith(ending)).sorted().toList();
      if (found.isEmpty()) {
        throw new IllegalStateException(folder + " holds no " + ending);
      }
      return found;
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /** Returns the rows of a table of two columns beside the files, without its head. */
  static List<List<String>> table(String name) {
    return lines(RESOURCES.resolve(name + ".tsv")).stream()
        .filter(line -> !line.startsWith("#"))
        .skip(1)
        .map(line -> List.of(line.split("\t", 2)))
        .toList();
  }

  /** Returns the cases of a table of our own that is written as JSON. */
  public static Stream<Raw.Obj> cases(String name) {
    String json = text(RESOURCES.resolve(name + ".json"));
    return RawJson.OWN.read(json).orThrow().objects("cases").stream();
  }

  /** Returns the documents of a folder. */
  static List<Raw> documents(Path folder) {
    return jsonFiles(folder).stream().map(file -> raw(text(file))).toList();
  }

  static Raw raw(String json) {
    return new RawJson(Limits.USUAL).read(json).orThrow();
  }

  /** Returns the lines of a file. */
  static List<String> lines(Path file) {
    try {
      return Files.readAllLines(file);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
