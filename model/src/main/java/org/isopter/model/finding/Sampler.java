package org.isopter.model.finding;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Result;

/** Makes random values that fit their spec; the same random source gives the same values. */
public final class Sampler {

  private static final String LETTERS = "abcdefghij KLMNOP,;<>&\"'/äß°½ 0123456789";
  private static final int TRIES = 1000;

  private final RandomGenerator random;

  /** Makes a sampler on a source of randomness. */
  public Sampler(RandomGenerator random) {
    this.random = random;
  }

  /**
   * Returns a random value of a layout.
   *
   * @throws IllegalStateException when it is drawn for a spec that has no values
   */
  public <V> V value(Layout<V> layout) {
    for (int tries = 0; tries < TRIES; tries++) {
      // Rules between parts refuse some draws; drawing again keeps the rules in one place.
      if (layout.decode(panel(layout)) instanceof Result.Ok<V> ok) {
        return ok.value();
      }
    }
    throw new IllegalStateException("no draw of " + TRIES + " fits the rules of the layout");
  }

  /** Returns a random datum of a spec. */
  public Datum datum(Spec spec) {
    return spec.fold(new Draw());
  }

  /** Returns random text without control characters or spaces around it. */
  public String text(int longest) {
    int length = 1 + random.nextInt(Math.min(longest, 40));
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < length; i++) {
      text.append(LETTERS.charAt(random.nextInt(LETTERS.length())));
    }
    String stripped = text.toString().strip();
    return stripped.isEmpty() ? "x" : stripped;
  }

  /** Returns one of a list. */
  public <T> T pick(List<T> list) {
    return list.get(random.nextInt(list.size()));
  }

  private EncodedValue panel(Layout<?> layout) {
    Variant variant = pick(layout.variants());
    Map<String, Outcome<Datum>> parts = new LinkedHashMap<>();
    for (Part<?, ?> part : variant.parts()) {
      if (part.isRequired() || random.nextBoolean()) {
        parts.put(part.key(), part(part));
      }
    }
    return new EncodedValue(variant.notation(), variant.value().map(this::datum), parts);
  }

  private Outcome<Datum> part(Part<?, ?> part) {
    return part.mayBeAbsent() && random.nextInt(6) == 0
        ? Outcome.absent(pick(List.of(Absence.values())))
        : Outcome.found(datum(part.spec()));
  }

  private BigDecimal number(Span span, int decimals) {
    int scale = random.nextInt(decimals + 1);
    BigInteger low = ceiling(span.least(), scale);
    BigInteger high = span.most().movePointRight(scale).toBigInteger();
    if (low.compareTo(high) > 0) {
      // The span holds no number of so few decimals, for instance none from 0.1 to 0.5.
      return number(span, decimals, decimals);
    }
    return between(low, high, scale);
  }

  private BigDecimal number(Span span, int decimals, int scale) {
    BigInteger high = span.most().movePointRight(decimals).toBigInteger();
    return between(ceiling(span.least(), scale), high, scale);
  }

  private BigDecimal between(BigInteger low, BigInteger high, int scale) {
    long width = high.subtract(low).longValueExact();
    return new BigDecimal(low.add(BigInteger.valueOf(random.nextLong(width + 1))), scale);
  }

  private static BigInteger ceiling(BigDecimal number, int scale) {
    return number.movePointRight(scale).setScale(0, java.math.RoundingMode.CEILING).toBigInteger();
  }

  private final class Draw implements Spec.Cases<Datum> {
    @Override
    public Datum measure(Spec.Measure spec) {
      Span span = pick(spec.spans());
      return new Datum.Measure(number(span, spec.decimals()), span.unit());
    }

    @Override
    public Datum count(Spec.Count spec) {
      return new Datum.Count(random.nextInt(spec.least(), spec.most() + 1));
    }

    @Override
    public Datum coded(Spec.Coded spec) {
      return new Datum.Coded(pick(spec.answers().concepts()));
    }

    @Override
    public Datum truth(Spec.Truth spec) {
      return new Datum.Truth(random.nextBoolean());
    }

    @Override
    public Datum text(Spec.Text spec) {
      return new Datum.Text(Sampler.this.text(spec.longest()));
    }

    @Override
    public Datum ratio(Spec.Ratio spec) {
      BigDecimal denominator = number(spec.denominator(), spec.decimals());
      Span numerator =
          spec.proper()
              ? new Span(
                  spec.unit(), spec.numerator().least(), spec.numerator().most().min(denominator))
              : spec.numerator();
      return new Datum.Ratio(number(numerator, spec.decimals()), denominator, spec.unit());
    }
  }
}
