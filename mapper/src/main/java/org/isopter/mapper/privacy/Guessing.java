package org.isopter.mapper.privacy;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.Map;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.zip.Deflater;

/**
 * How hard a secret is to guess, by the least of several estimates: no estimate can tell that a
 * secret is good, but each can tell that one is bad.
 *
 * <p>Characters count by how often each occurs (Shannon 1948,
 * doi:10.1002/j.1538-7305.1948.tb01338.x), what repeats counts once (by compression), and words of
 * a language count 1.3 bits a letter (Shannon 1951, doi:10.1002/j.1538-7305.1951.tb01366.x, the
 * upper end of 0.6 to 1.3).
 */
final class Guessing {

  /** The fewest bits of a secret: a key of the AES has 128, of which some margin is left. */
  static final int FEWEST_BITS = 80;

  private static final Pattern PROSE = Pattern.compile("(\\p{L}\\p{Ll}*|[ .,:;'!?-])*+");

  private static final double BITS_OF_A_LETTER = 1.3;

  private Guessing() {}

  static boolean isHard(String secret) {
    double least = Math.min(frequencies(secret), compressed(secret));
    return (isProse(secret) ? Math.min(least, words(secret)) : least) >= FEWEST_BITS;
  }

  private static double words(String secret) {
    return BITS_OF_A_LETTER * secret.codePointCount(0, secret.length());
  }

  /** Words: nothing but letters, capitals only at their beginning, and what parts sentences. */
  private static boolean isProse(String secret) {
    return PROSE.matcher(secret).matches();
  }

  private static double frequencies(String secret) {
    Map<Integer, Long> counts =
        secret
            .codePoints()
            .boxed()
            .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
    double length = secret.codePointCount(0, secret.length());
    return counts.values().stream().mapToDouble(n -> -n * Math.log(n / length) / Math.log(2)).sum();
  }

  private static double compressed(String secret) {
    Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION, true);
    deflater.setInput(secret.getBytes(UTF_8));
    deflater.finish();
    byte[] out = new byte[2 * secret.length() + 64];
    int length = deflater.deflate(out);
    deflater.end();
    return 8.0 * length;
  }
}
