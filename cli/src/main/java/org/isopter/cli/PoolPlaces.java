package org.isopter.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.model.value.Fault;
import org.jspecify.annotations.Nullable;

/** The places that a pool writes to, which may not be those of its inputs. */
final class PoolPlaces {

  private final Path output;
  private final Optional<Path> leftover;

  /**
   * Names the places.
   *
   * @param output the folder of the pool
   * @param leftover the file of what is left over, where one is wanted
   */
  PoolPlaces(Path output, @Nullable Path leftover) {
    this.output = real(output);
    this.leftover = Optional.ofNullable(leftover).map(PoolPlaces::real);
  }

  /** Returns why the places will not do: something would be written over. */
  Optional<Fault> clash(List<Source> sources) {
    for (Source source : sources) {
      Optional<Path> file = source.file().map(PoolPlaces::real);
      if (file.filter(one -> one.startsWith(output)).isPresent()) {
        String advice = "name another folder, or take the older pool away first";
        return Optional.of(
            new Fault("--output", "the input " + source.name() + " in it", "no input", advice));
      }
      if (file.isPresent() && file.equals(leftover)) {
        return Optional.of(
            Fault.of("--leftover", "the input " + source.name(), "a file of its own"));
      }
    }
    return leftover.filter(file -> file.startsWith(output)).isPresent()
        ? Optional.of(
            Fault.of("--leftover", "a file in the folder of the pool", "a file outside of it"))
        : leftover
            .filter(Files::isDirectory)
            .map(folder -> Fault.of("--leftover", "the folder " + folder, "a file"));
  }

  /** Returns a path without links, as far as it is there. */
  private static Path real(Path path) {
    Path whole = path.toAbsolutePath().normalize();
    try {
      Path above = whole.getParent();
      return Files.exists(whole) || above == null
          ? whole.toRealPath()
          : real(above).resolve(String.valueOf(whole.getFileName()));
    } catch (IOException gone) {
      return whole;
    }
  }
}
