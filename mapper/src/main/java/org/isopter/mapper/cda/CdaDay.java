package org.isopter.mapper.cda;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The day of a measurement in words: "Tonometry on 2026-03-02 at 08:15a". */
final class CdaDay {

  private static final Pattern DAY =
      Pattern.compile(
          "\\s+on (\\d{4}-\\d{2}-\\d{2})( at \\d{1,2}:\\d{2}\\s*([ap]\\.?m?\\.?)?)?$",
          Pattern.CASE_INSENSITIVE);

  private CdaDay() {}

  /** Returns words without the day at their end, where it is that of a time; all of them if not. */
  static String without(String words, String time) {
    Matcher day = DAY.matcher(words);
    boolean same = day.find() && time.startsWith(day.group(1));
    return same ? words.substring(0, day.start()) : words;
  }
}
