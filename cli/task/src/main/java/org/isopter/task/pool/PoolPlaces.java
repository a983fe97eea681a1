package org.isopter.task.pool;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.value.Fault;
import org.isopter.task.input.InputSource;
import org.isopter.task.io.RealPath;
import org.jspecify.annotations.Nullable;

/** The places that a pool writes to, which may not be those of its inputs. */
public final class PoolPlaces {

  private final Path output;

  /** The private files by the options that name them. */
  private final Map<String, Path> files = new LinkedHashMap<>();

  /**
   * Names the places.
   *
   * @param output the folder of the pool
   * @param leftover the file of what is left over, where one is wanted
   * @param origins the file of where examinations were read, where one is wanted
   */
  public PoolPlaces(Path output, @Nullable Path leftover, @Nullable Path origins) {
    this.output = RealPath.of(output);
    Optional.ofNullable(leftover).ifPresent(file -> files.put("--leftover", RealPath.of(file)));
    Optional.ofNullable(origins).ifPresent(file -> files.put("--origins", RealPath.of(file)));
  }

  /** Returns why the places will not do: something would be written over. */
  public Optional<Fault> clash(List<InputSource> sources) {
    for (InputSource source : sources) {
      Optional<Path> input = source.file().map(RealPath::of);
      if (input.filter(one -> one.startsWith(output)).isPresent()) {
        String advice = "name another folder, or take the older pool away first";
        return Optional.of(
            new Fault("--output", "the input " + source.name() + " in it", "no input", advice));
      }
      Optional<Fault> over = input.flatMap(this::option).map(option -> over(option, source.name()));
      if (over.isPresent()) {
        return over;
      }
    }
    return amongThemselves();
  }

  private static Fault over(String option, String input) {
    return Fault.of(option, "the input " + input, "a file of its own");
  }

  private Optional<String> option(Path path) {
    return files.entrySet().stream()
        .filter(file -> file.getValue().equals(path))
        .<String>map(Map.Entry::getKey)
        .findFirst();
  }

  private Optional<Fault> amongThemselves() {
    if (files.values().stream().distinct().count() < files.size()) {
      return Optional.of(Fault.of("--origins", "the file of --leftover", "a file of its own"));
    }
    return files.entrySet().stream().flatMap(file -> unfit(file).stream()).findFirst();
  }

  private Optional<Fault> unfit(Map.Entry<String, Path> file) {
    if (file.getValue().startsWith(output)) {
      String seen = "a file in the folder of the pool";
      return Optional.of(Fault.of(file.getKey(), seen, "a file outside of it"));
    }
    return Files.isDirectory(file.getValue())
        ? Optional.of(Fault.of(file.getKey(), "the folder " + file.getValue(), "a file"))
        : Optional.empty();
  }
}
