package org.isopter.cli;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Optional;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.Intake;
import org.isopter.mapper.foreign.Limits;
import org.isopter.mapper.foreign.Options;
import org.isopter.mapper.foreign.Policy;
import org.isopter.mapper.foreign.Receiver;
import org.isopter.mapper.foreign.Release;
import org.isopter.mapper.foreign.Together;
import org.isopter.model.catalogue.Catalogue;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** How FHIR of any system is to be read. */
final class ForeignInputs {

  @Option(
      names = "--release",
      paramLabel = "RELEASE",
      defaultValue = "R4",
      description = "Release of FHIR: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).")
  Release release = Release.R4;

  @Option(
      names = "--policy",
      paramLabel = "POLICY",
      defaultValue = "faithful",
      description = {
        "What to do with what no rule takes: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).",
        "strict refuses the input, faithful tells it and keeps it beside the record, extract tells"
            + " it and lets it go."
      })
  Policy policy = Policy.FAITHFUL;

  @Option(
      names = "--together",
      paramLabel = "WHAT",
      defaultValue = "folder",
      description = {
        "What is read together, so that one may refer to another: ${COMPLETION-CANDIDATES}"
            + " (default: ${DEFAULT-VALUE}).",
        "folder: the single resources of a folder, or of a block of 2,000 lines; each bundle by"
            + " itself. all: everything, held in memory. none: each file and line by itself."
      })
  Together together = Together.FOLDER;

  @Option(
      names = "--zone",
      paramLabel = "ZONE",
      converter = Zone.class,
      description = "Time zone of a day without an hour, as Europe/Paris or +01:00 (default: UTC).")
  @Nullable ZoneId zone;

  @Option(
      names = "--window",
      paramLabel = "TIME",
      converter = Window.class,
      description = {
        "How far apart observations of one person may lie and still be one examination, as 30m or"
            + " 2h, where neither a report nor an encounter tells it (default: the same instant)."
      })
  @Nullable Duration window;

  @Option(
      names = "--largest",
      paramLabel = "MB",
      defaultValue = "64",
      description = "Refuse a document larger than this (default: ${DEFAULT-VALUE}).")
  int largest = 64;

  Options options() {
    Limits usual = Limits.USUAL;
    return new Options(
        zone == null ? ZoneOffset.UTC : zone,
        window == null ? Duration.ZERO : window,
        new Limits(usual.depth(), usual.stringLength(), bytes()));
  }

  /** Returns the most bytes of a document. */
  int bytes() {
    return (int) Math.min(Math.max(1, largest) * 1_000_000L, Integer.MAX_VALUE - 8);
  }

  Intake intake(Receiver receiver) {
    ForeignReader reader = new ForeignReader(Catalogue.standard(), options());
    return Intake.of(reader, release, together, receiver);
  }

  /** Returns everything that decides about the outcome, in words. */
  String asked() {
    Options options = options();
    return "%s, %s, zone %s, window %s, %d MB, together %s"
        .formatted(release, policy, options.zone(), options.window(), largest, together);
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
  static final class Window implements ITypeConverter<Duration> {
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
