package org.isopter.task.pool;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.model.value.Fault;
import org.isopter.task.input.InputSource;
import org.isopter.task.io.RealPath;

/** The places that a pool writes to, which may not be those of its inputs. */
final class PoolPlaces {

  private final Path output;

  /** The private files by the options that name them. */
  private final Map<String, Path> files = new LinkedHashMap<>();

  /** Takes the places from the plan of a pool. */
  PoolPlaces(PoolPlan plan) {
    this.output = RealPath.of(plan.folder());
    plan.wholeLeft().ifPresent(file -> files.put("--leftover", RealPath.of(file)));
    plan.origins().ifPresent(file -> files.put("--origins", RealPath.of(file)));
  }

  /** Returns why the places will not do: something would be written over. */
  Optional<Fault> clash(List<InputSource> sources) {
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
