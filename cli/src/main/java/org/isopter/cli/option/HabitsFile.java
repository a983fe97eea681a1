package org.isopter.cli.option;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Optional;
import org.isopter.mapper.io.FailureText;
import org.isopter.model.note.habit.Habits;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a file of habits and phrases, and says at once what is wrong with it. */
public final class HabitsFile implements ITypeConverter<Habits> {

  @Override
  public Habits convert(String file) {
    Result<Habits> habits = Habits.read(text(file));
    if (!habits.isOk()) {
      Fault first = habits.faults().get(0);
      throw new TypeConversionException(file + ": " + first);
    }
    Optional<String> zone = habits.orThrow().settings().zone();
    if (zone.isPresent() && !ZoneId.getAvailableZoneIds().contains(zone.get())) {
      throw new TypeConversionException(
          file + ": saw the zone \"" + zone.get() + "\", wanted a name such as Europe/London");
    }
    return habits.orThrow();
  }

  private static String text(String file) {
    try {
      return Files.readString(Path.of(file), UTF_8);
    } catch (IOException | InvalidPathException unreadable) {
      throw new TypeConversionException(
          file + ": " + FailureText.of(unreadable) + ", wanted a file of habits in UTF-8");
    }
  }
}
