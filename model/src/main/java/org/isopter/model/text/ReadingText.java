package org.isopter.model.text;

import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.Chart;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.catalogue.AcuityBound;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.LowVision;
import org.isopter.model.value.Quantity;

/** The words of a letter for an acuity: what was seen, and through what, on which chart. */
public final class ReadingText {

  private ReadingText() {}

  static String of(AcuityReading reading) {
    String gap =
        reading.acuity() instanceof Acuity.NotImproved || reading.correction().isEmpty()
            ? ", "
            : " ";
    String conditions = conditions(reading);
    return seen(reading) + (conditions.isEmpty() ? "" : gap + conditions);
  }

  static String of(AcuityBound bound) {
    String correction = bound.correction().map(lens -> " " + correction(lens)).orElse("");
    return join(
        bound.side().word() + " than " + of(bound.line()) + correction,
        chart(bound.chart(), bound.distance()));
  }

  /** Returns what was seen, without what was worn and the chart. */
  public static String seen(AcuityReading reading) {
    return of(reading.acuity()) + (reading.isInPart() ? " in part" : "");
  }

  /** Returns what was worn, the chart, its distance and its letters; empty where none is stated. */
  public static String conditions(AcuityReading reading) {
    return join(
        reading.correction().map(ReadingText::correction).orElse(""),
        chart(reading.chart(), reading.distance()),
        reading
            .lettersPerLine()
            .map(count -> count + (count == 1 ? " letter" : " letters") + " to a line")
            .orElse(""));
  }

  private static String chart(Optional<Chart> chart, Optional<Quantity> distance) {
    String name = chart.map(one -> chart(PlainWords.concept(one))).orElse("");
    String far = distance.map(d -> "at " + PlainWords.quantity(d)).orElse("");
    return (name + " " + far).strip();
  }

  private static String chart(String word) {
    if (word.equals("other")) {
      return "another chart";
    }
    if (word.equals("pictures") || word.equals("single letters")) {
      return word;
    }
    return word.endsWith("card") || word.endsWith("chart") ? word : word + " chart";
  }

  private static String correction(Correction lens) {
    return switch (lens) {
      case UNAIDED -> "unaided";
      case HABITUAL -> "with the usual correction";
      case BEST -> "best corrected";
      case CORRECTED -> "corrected (with what is not recorded)";
      default -> "with " + PlainWords.concept(lens);
    };
  }

  static String of(Acuity acuity) {
    if (acuity instanceof Acuity.NotImproved) {
      return "no improvement";
    }
    return acuity instanceof Acuity.Low low
        ? low(low.category()) + low.distance().map(d -> " at " + PlainWords.quantity(d)).orElse("")
        : acuity.toString().replaceFirst("^1 letters$", "1 letter");
  }

  private static String low(LowVision category) {
    return switch (category) {
      case COUNTING_FINGERS -> "counts fingers";
      case HAND_MOVEMENTS -> "sees hand movements";
      case LIGHT_PERCEPTION -> "perceives light";
      case LIGHT_PERCEPTION_ACCURATE -> "perceives light and its direction";
      case LIGHT_PERCEPTION_INACCURATE -> "perceives light but not its direction";
      case NO_LIGHT_PERCEPTION -> "no perception of light";
    };
  }

  private static String join(String... words) {
    return Stream.of(words).filter(some -> !some.isBlank()).collect(Collectors.joining(", "));
  }
}
