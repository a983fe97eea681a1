package org.isopter.mapper.record;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Shapes;
import org.isopter.model.finding.Span;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Values;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Term;
import org.isopter.model.value.Unit;

/**
 * A finding that no clinic records, with a part of every kind and words that YAML could mistake.
 *
 * @param glow the value itself, a number without a unit or in decibels
 * @param answer one of words that older YAML takes for something else
 * @param twinkles how many, or why that is not known
 * @param green a yes or no
 * @param words free text
 * @param share a ratio with a unit
 */
record MadeUp(
    Quantity glow,
    Optional<Term> answer,
    Optional<Outcome<Integer>> twinkles,
    Optional<Boolean> green,
    Optional<String> words,
    Optional<Datum.Ratio> share) {

  private static final Part<MadeUp, Term> ANSWER =
      Part.optional(
          "answer",
          "Answer",
          Shapes.oneOfWords("made-up-answer", "no", "yes", "on", "null", "true", "1e3", "a: b"),
          MadeUp::answer);

  private static final Part<MadeUp, Integer> TWINKLES =
      Part.orAbsent("twinkles", "Twinkles", Shapes.count(-3, 300), MadeUp::twinkles);

  private static final Part<MadeUp, Boolean> GREEN =
      Part.optional("green", "Green", Shapes.truth(), MadeUp::green);

  private static final Part<MadeUp, String> WORDS =
      Part.optional("words", "Words", Shapes.text(40), MadeUp::words);

  private static final Part<MadeUp, Datum.Ratio> SHARE =
      Part.optional("share", "Share", Shapes.ratio(percent()), MadeUp::share);

  static final Finding<MadeUp> GLOW =
      Finding.of("made-up-glow", "Glow")
          .value(
              Layout.of(
                  Shapes.measure(2, Span.of(Unit.ONE, "0", "1"), Span.of(Unit.DECIBEL, "-5", "40")),
                  MadeUp::glow,
                  List.of(ANSWER, TWINKLES, GREEN, WORDS, SHARE),
                  MadeUp::of))
          .at(Site.EACH_OR_BOTH)
          .build();

  private static MadeUp of(Quantity glow, Values parts) {
    return new MadeUp(
        glow,
        parts.find(ANSWER),
        parts.outcome(TWINKLES),
        parts.find(GREEN),
        parts.find(WORDS),
        parts.find(SHARE));
  }

  private static Spec.Ratio percent() {
    Span span = new Span(Unit.PERCENT, BigDecimal.ZERO, BigDecimal.TEN);
    return new Spec.Ratio(Unit.PERCENT, span, span, 1, true);
  }
}
