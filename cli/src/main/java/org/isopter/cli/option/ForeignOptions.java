package org.isopter.cli.option;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Optional;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.foreign.vocabulary.DepartmentAliases;
import org.isopter.mapper.json.Limits;
import org.isopter.mapper.pool.PoolReader;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.Result;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** What FHIR of other systems does not say of itself. */
public final class ForeignOptions {

  @Option(
      names = "--release",
      paramLabel = "RELEASE",
      defaultValue = "R4",
      description = "Release of FHIR: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).")
  public Release release = Release.R4;

  @Option(
      names = "--zone",
      paramLabel = "ZONE",
      converter = Zone.class,
      description = {
        "Time zone of a day without an hour, as Europe/Paris or +01:00 (default: UTC), and of a"
            + " time of a message (HL7 v2) without an offset (default: its day alone)."
      })
  @Nullable ZoneId zone;

  @Option(
      names = "--window",
      paramLabel = "TIME",
      converter = Window.class,
      description = {
        "How far apart observations of one person may lie and still be one examination, as 30m or"
            + " 2h, where neither a report nor an encounter says it (default: the same instant)."
      })
  @Nullable Duration window;

  @Option(
      names = "--performed",
      paramLabel = "TIME",
      converter = Time.class,
      description = {
        "When, for all that states no time and that no report gives one, with its offset:"
            + " 2026-03-03T09:10:00+01:00."
      })
  @Nullable OffsetDateTime performed;

  @Option(
      names = "--habits",
      paramLabel = "FILE",
      converter = Aliases.class,
      description =
          "Codes, units and words of the department: the lines 'fhir' of its file of habits.")
  DepartmentAliases aliases = DepartmentAliases.none();

  Duration window() {
    return window == null ? Duration.ZERO : window;
  }

  /** Returns a reader of records and FHIR for a pool. */
  public PoolReader reader() {
    return new PoolReader(Catalogue.standard(), options(), release);
  }

  /** Returns these options for a reader. */
  public Options options() {
    return new Options(
        Optional.ofNullable(zone), window(), Limits.USUAL, Optional.ofNullable(performed), aliases);
  }

  /** Reads the lines about FHIR in a file of habits, and says at once what is wrong with them. */
  static final class Aliases implements ITypeConverter<DepartmentAliases> {
    @Override
    public DepartmentAliases convert(String file) {
      Result<DepartmentAliases> aliases =
          DepartmentAliases.of(new HabitsFile().convert(file).fhir(), Catalogue.standard());
      if (!aliases.isOk()) {
        throw new TypeConversionException(file + ": " + aliases.faults().get(0));
      }
      return aliases.orThrow();
    }
  }

  /** Reads a day and a time with its offset. */
  static final class Time implements ITypeConverter<OffsetDateTime> {
    @Override
    public OffsetDateTime convert(String word) {
      try {
        return OffsetDateTime.parse(word);
      } catch (DateTimeException unreadable) {
        throw new TypeConversionException(
            "'" + word + "' is no day and time with its offset, such as 2026-03-03T09:10:00+01:00");
      }
    }
  }

  /** Reads a time zone. */
  static final class Zone implements ITypeConverter<ZoneId> {
    @Override
    public ZoneId convert(String word) {
      try {
        return ZoneId.of(word);
      } catch (DateTimeException unknown) {
        throw new TypeConversionException(
            "'" + word + "' is no time zone, such as Europe/Paris or +01:00");
      }
    }
  }

  /** Reads a length of time. */
  public static final class Window implements ITypeConverter<Duration> {
    @Override
    public Duration convert(String word) {
      return read(word)
          .filter(time -> !time.isNegative())
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "'" + word + "' is no length of time, such as 90s, 30m or 2h"));
    }

    private static Optional<Duration> read(String word) {
      try {
        String upper = word.toUpperCase(Locale.ROOT);
        return Optional.of(Duration.parse(upper.startsWith("P") ? upper : "PT" + upper));
      } catch (DateTimeException unreadable) {
        return Optional.empty();
      }
    }
  }
}
