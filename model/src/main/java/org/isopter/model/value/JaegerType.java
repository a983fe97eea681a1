package org.isopter.model.value;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A size of print on a Jaeger card, J1+ (smallest) to J20.
 *
 * @param word what the trade writes, for instance {@code J3} or {@code J1+}
 * @param code our own code; no published code was found
 */
public record JaegerType(String word, Code code) implements Concept {

  /** Every type, smallest print first. */
  public static final List<JaegerType> ALL =
      Stream.concat(
              Stream.of(of("J1+", "j1-plus")),
              IntStream.rangeClosed(1, 20).mapToObj(step -> of("J" + step, "j" + step)))
          .toList();

  private static JaegerType of(String word, String code) {
    return new JaegerType(word, Code.local("jaeger-type", code, "Jaeger " + word));
  }
}
