package org.isopter.model.check;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Seen;
import org.isopter.model.finding.Finding;
import org.isopter.model.text.RecordText;

/**
 * The facts that break a rule.
 *
 * @param where the fact to look at
 * @param part the part of it to look at, when it is one part
 * @param seen the facts in words
 */
record Breach(Fact<?> where, Optional<String> part, String seen) {

  static Breach of(Seen<?> where, Seen<?>... beside) {
    return of(where.fact(), Arrays.stream(beside).map(Seen::fact).toArray(Fact<?>[]::new));
  }

  static Breach of(Fact<?> where, Fact<?>... beside) {
    String others = Arrays.stream(beside).map(RecordText::of).collect(Collectors.joining(" and "));
    String seen = RecordText.of(where) + (others.isEmpty() ? "" : " beside " + others);
    return new Breach(where, Optional.empty(), seen);
  }

  /** Returns a breach for each value of one kind beside which there is a value of another kind. */
  static <A, B> Stream<Breach> clash(
      EyeView eye,
      Finding<A> where,
      Predicate<? super A> which,
      Finding<B> other,
      Predicate<? super B> what) {
    return eye.seen(where, which)
        .flatMap(one -> eye.beside(one, other, what).map(two -> Breach.of(one, two)).stream());
  }

  /** Returns this breach as found in one part. */
  Breach in(String key) {
    return new Breach(where, Optional.of(key), seen);
  }
}
