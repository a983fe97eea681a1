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
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.CanonicalType;
import org.hl7.fhir.r4.model.ImplementationGuide;
import org.hl7.fhir.r4.model.Reference;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The example resources that lie beside the classes. */
final class Examples {

  private static final String README = "package/example/README.md";

  private static final JsonMapper MAPPER = new JsonMapper();

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

  /** Returns a guide that lists the examples, each as one of the profile that it claims. */
  static ImplementationGuide listedIn(ImplementationGuide guide) throws IOException {
    ImplementationGuide listing = guide.copy();
    all().values().forEach(example -> list(MAPPER.readTree(example), listing));
    return listing;
  }

  private static void list(JsonNode example, ImplementationGuide guide) {
    String type = example.path("resourceType").asString();
    String id = example.path("id").asString();
    String profile = example.at("/meta/profile/0").asString("");
    guide
        .getDefinition()
        .addResource()
        .setReference(new Reference(type + "/" + id))
        .setName("Example: " + id)
        .setExample(profile.isEmpty() ? new BooleanType(true) : new CanonicalType(profile));
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
