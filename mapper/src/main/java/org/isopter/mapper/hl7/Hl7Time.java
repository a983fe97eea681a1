package org.isopter.mapper.hl7;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** A time as HL7 versions 2 and 3 write it: digits from the year on, as many as are known. */
public final class Hl7Time {

  private static final String DIGITS =
      "(\\d{4})(?:(\\d{2})(?:(\\d{2})(?:(\\d{2})(\\d{2})(\\d{2})?(\\.\\d+)?";
  private static final String OFFSET = "([+-]\\d{4})?";
  private static final String END = ")?)?)?";
  private static final int OFFSET_GROUP = 8;

  /** Version 2 has an offset behind a day, too; version 3 behind minutes alone. */
  private static final Pattern VERSION_2 = Pattern.compile(DIGITS + END + OFFSET);

  private static final Pattern VERSION_3 = Pattern.compile(DIGITS + OFFSET + END);

  private static final DateTimeFormatter OFFSET_FORM = DateTimeFormatter.ofPattern("xx");

  private final Matcher parts;

  private Hl7Time(Matcher parts) {
    this.parts = parts;
  }

  /** Returns a time of version 2; empty for what is none. */
  public static Optional<Hl7Time> version2(String text) {
    return of(VERSION_2, text);
  }

  /** Returns a time of version 3; empty for what is none. */
  public static Optional<Hl7Time> version3(String text) {
    return of(VERSION_3, text);
  }

  private static Optional<Hl7Time> of(Pattern form, String text) {
    return Optional.of(form.matcher(text)).filter(Matcher::matches).map(Hl7Time::new);
  }

  /** Returns the offset, as four digits with a sign; empty where it has none. */
  public String offset() {
    return part(OFFSET_GROUP, "");
  }

  /**
   * Returns the offset of a zone at this time, as four digits with a sign; empty where this is a
   * day, none that there is, or an hour that the clocks of the zone showed twice or never.
   */
  public Optional<String> offsetIn(ZoneId zone) {
    if (parts.group(4) == null) {
      return Optional.empty();
    }
    String day = part(1, "") + "-" + part(2, "") + "-" + part(3, "");
    String hour = part(4, "") + ":" + part(5, "") + ":" + part(6, "00");
    try {
      List<ZoneOffset> valid =
          zone.getRules().getValidOffsets(LocalDateTime.parse(day + "T" + hour));
      return valid.size() == 1 ? Optional.of(OFFSET_FORM.format(valid.get(0))) : Optional.empty();
    } catch (DateTimeParseException none) {
      return Optional.empty();
    }
  }

  /** Returns it as FHIR writes it: as exact as it is, and without an offset the day at most. */
  public String text() {
    return text(offset());
  }

  /**
   * Returns it as FHIR writes it.
   *
   * @param usual the offset that holds where it has none; empty where none is known
   */
  public String text(String usual) {
    StringBuilder text = new StringBuilder(part(1, ""));
    for (int i = 2; i <= 3 && parts.group(i) != null; i++) {
      text.append('-').append(parts.group(i));
    }
    String offset = part(OFFSET_GROUP, usual);
    if (parts.group(4) != null && !offset.isEmpty()) {
      text.append('T').append(parts.group(4)).append(':').append(parts.group(5));
      text.append(':').append(part(6, "00")).append(part(7, ""));
      text.append(offset, 0, 3).append(':').append(offset, 3, 5);
    }
    return text.toString();
  }

  private String part(int group, String missing) {
    @Nullable String found = parts.group(group);
    return found == null ? missing : found;
  }
}
