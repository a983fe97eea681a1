package org.isopter.model.note.token;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Quantity;

/** Small pieces of written shorthand. */
public final class WrittenWords {

  private WrittenWords() {}

  /** Returns the pieces with a space between, without those that are empty. */
  public static String join(String... pieces) {
    List<String> words = new ArrayList<>();
    for (String piece : pieces) {
      if (!piece.isEmpty()) {
        words.add(piece);
      }
    }
    return String.join(" ", words);
  }

  /** Returns the word of a concept, with spaces in place of hyphens. */
  public static String of(Concept concept) {
    return concept.word().replace('-', ' ');
  }

  /** Returns the words of what is there; none where nothing is. */
  public static <T> String maybe(Optional<T> some, Function<T, String> words) {
    return some.map(words).orElse("");
  }

  /** Returns the lead and the word of a concept; none where there is no concept. */
  public static String maybe(String lead, Optional<? extends Concept> concept) {
    return concept.map(c -> join(lead, of(c))).orElse("");
  }

  /** Returns the lead and a quantity with its unit; none where there is no quantity. */
  public static String maybeQuantity(String lead, Optional<Quantity> quantity) {
    return quantity.map(q -> join(lead, q.toString())).orElse("");
  }

  /** Returns a number with its sign, plus for nought. */
  public static String signed(BigDecimal number) {
    return (number.signum() < 0 ? "" : "+") + number.toPlainString();
  }
}
