package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.File;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.SimpleJavaFileObject;
import javax.tools.ToolProvider;
import org.isopter.mapper.record.RecordReader;
import org.isopter.model.exam.Exam;
import org.isopter.profiles.ProfileValidator;
import org.isopter.task.report.RunLog;

/** The Java that pages show, compiled against this build as a reader of the page would do it. */
final class JavaBlocks {

  private static final Pattern BLOCK = Pattern.compile("(?ms)^```java\\n(.*?)^```$");
  private static final Pattern TYPE = Pattern.compile("(?<![\\w.\"])[A-Z]\\w*[a-z]\\w*");
  private static final List<String> MODULES =
      List.of("model", "profiles", "mapper", "cli/task", "cli");
  private static final Map<String, List<String>> TYPES = types();

  private JavaBlocks() {}

  /** Returns the blocks of Java on a page, in order. */
  static List<String> of(Path page) throws IOException {
    return BLOCK
        .matcher(Files.readString(page, UTF_8))
        .results()
        .map(block -> block.group(1))
        .toList();
  }

  /**
   * Returns the imports that a block needs, as lines: of each class of ours that it names.
   *
   * @throws IllegalStateException if two packages have a class of that name
   */
  static String imports(String block) {
    Set<String> names =
        TYPE.matcher(block)
            .results()
            .map(MatchResult::group)
            .collect(Collectors.toCollection(TreeSet::new));
    return names.stream().flatMap(name -> packageOf(name).stream()).collect(Collectors.joining());
  }

  private static List<String> packageOf(String name) {
    List<String> found = TYPES.getOrDefault(name, List.of());
    if (found.size() > 1) {
      throw new IllegalStateException(name + " may be any of " + found);
    }
    return found.stream().map(type -> "import " + type + ";\n").toList();
  }

  /** Returns the classes of all modules with their packages, by their short name. */
  private static Map<String, List<String>> types() {
    return MODULES.stream()
        .map(module -> Path.of(module, "src/main/java"))
        .flatMap(JavaBlocks::sources)
        .collect(Collectors.groupingBy(type -> type.substring(type.lastIndexOf('.') + 1)));
  }

  private static Stream<String> sources(Path root) {
    try (Stream<Path> files = Files.walk(root)) {
      return files
          .map(file -> root.relativize(file).toString())
          .filter(file -> file.endsWith(".java"))
          .map(file -> file.replace(".java", "").replace('/', '.'))
          .toList()
          .stream();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /**
   * Compiles one class with every warning as an error, and loads it.
   *
   * @param into the folder for what the compiler writes
   * @throws AssertionError with the compiler's words if it does not compile
   */
  static Class<?> compiled(String type, String source, Path into) throws Exception {
    return compiled(Map.of(type, source), into).get(0);
  }

  /** Compiles classes by their names in one go, for a compiler is slow to start; in their order. */
  static List<Class<?>> compiled(Map<String, String> sources, Path into) throws Exception {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    StringWriter said = new StringWriter();
    List<String> options = List.of("-d", into.toString(), "-cp", classPath(), "-proc:none");
    List<Source> files = new ArrayList<>();
    sources.forEach((type, source) -> files.add(new Source(type, source)));
    if (!compiler.getTask(said, null, null, options, null, files).call()) {
      throw new AssertionError(said + "\n" + sources);
    }
    URL[] compiled = {into.toUri().toURL()};
    try (URLClassLoader loader = new URLClassLoader(compiled, JavaBlocks.class.getClassLoader())) {
      List<Class<?>> classes = new ArrayList<>();
      for (String type : sources.keySet()) {
        classes.add(loader.loadClass(type));
      }
      return classes;
    }
  }

  /** Returns where the modules of this build are; a page shows nothing that needs another. */
  private static String classPath() throws Exception {
    List<String> places = new ArrayList<>();
    for (Class<?> one :
        List.of(Exam.class, RecordReader.class, ProfileValidator.class, RunLog.class)) {
      places.add(
          Path.of(one.getProtectionDomain().getCodeSource().getLocation().toURI()).toString());
    }
    return String.join(File.pathSeparator, places);
  }

  /** A source that is no file. */
  private static final class Source extends SimpleJavaFileObject {

    private final String text;

    Source(String type, String text) {
      super(URI.create("string:///" + type.replace('.', '/') + ".java"), Kind.SOURCE);
      this.text = text;
    }

    @Override
    public CharSequence getCharContent(boolean ignoreEncodingErrors) {
      return text;
    }
  }
}
