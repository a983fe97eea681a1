package org.isopter.profiles;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/** A folder of checked-in files that must be what the code makes; written anew on request. */
final class Golden {

  private Golden() {}

  /** Says whether the files are to be written anew: {@code -Dgolden=update}. */
  static boolean isUpdate() {
    return "update".equals(System.getProperty("golden"));
  }

  /** Checks the JSON files of a folder, by name, or writes them. */
  static void check(Path folder, Map<String, String> wanted) throws IOException {
    if (isUpdate()) {
      update(folder, wanted);
    }
    Map<String, String> found = read(folder);
    assertEquals(new TreeSet<>(wanted.keySet()), found.keySet(), "the files in " + folder);
    wanted.forEach((name, text) -> assertEquals(text, found.get(name), name + " is stale"));
  }

  private static void update(Path folder, Map<String, String> wanted) throws IOException {
    Files.createDirectories(folder);
    for (String name : read(folder).keySet()) {
      Files.delete(folder.resolve(name));
    }
    for (Map.Entry<String, String> file : wanted.entrySet()) {
      Files.writeString(folder.resolve(file.getKey()), file.getValue(), UTF_8);
    }
  }

  private static Map<String, String> read(Path folder) throws IOException {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.list(folder)) {
      for (Path file : all.filter(path -> path.toString().endsWith(".json")).toList()) {
        files.put(file.getFileName().toString(), Files.readString(file, UTF_8));
      }
    }
    return files;
  }
}
