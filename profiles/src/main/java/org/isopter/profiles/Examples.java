package org.isopter.profiles;

import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;

/** The example resources that lie beside the classes. */
final class Examples {

  private static final String README = "package/example/README.md";

  private Examples() {}

  /** Returns the examples by the name of their file. */
  static Map<String, byte[]> all() throws IOException {
    URI readme = uri(Objects.requireNonNull(Examples.class.getResource(README), README));
    if (readme.getScheme().equals("file")) {
      return in(Objects.requireNonNull(Path.of(readme).getParent()));
    }
    try (FileSystem jar = FileSystems.newFileSystem(readme, Map.of())) {
      return in(Objects.requireNonNull(jar.provider().getPath(readme).getParent()));
    }
  }

  private static Map<String, byte[]> in(Path folder) throws IOException {
    Map<String, byte[]> examples = new TreeMap<>();
    for (Path file : jsonFiles(folder)) {
      examples.put(file.getFileName().toString(), Files.readAllBytes(file));
    }
    return examples;
  }

  private static List<Path> jsonFiles(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(".json")).toList();
    }
  }

  private static URI uri(URL url) throws IOException {
    try {
      return url.toURI();
    } catch (URISyntaxException unusable) {
      throw new IOException(unusable);
    }
  }
}
