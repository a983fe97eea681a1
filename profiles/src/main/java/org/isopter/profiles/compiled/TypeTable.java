package org.isopter.profiles.compiled;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/** A type of R4 with its members; one without any is primitive, or not known here. */
final class TypeTable {

  private final String name;
  private final Predicate<String> texts;
  private final Map<String, Member> byKey = new LinkedHashMap<>();
  private final Map<String, Long> bits = new HashMap<>();
  private long required;

  TypeTable(String name) {
    this.name = name;
    this.texts = Primitives.texts(name);
  }

  String name() {
    return name;
  }

  boolean isComplex() {
    return !byKey.isEmpty();
  }

  /** Says whether a JSON text is surely a value of the type. */
  boolean isText(String text) {
    return texts.test(text);
  }

  /** Returns the member under a name of JSON; nothing where there is none. */
  @Nullable Member member(String key) {
    return byKey.get(key);
  }

  /** Returns the bit of a member, the same for all types that a choice may have. */
  long bit(String member) {
    return bits.computeIfAbsent(member, any -> 1L << bits.size());
  }

  void add(Member member) {
    byKey.put(member.key(), member);
    required |= member.required() ? member.bit() : 0;
  }

  /**
   * Returns the name of a required member that is lacking.
   *
   * @param seen the bits of the members that are there
   */
  Optional<String> lacking(long seen) {
    long missing = required & ~seen;
    return missing == 0
        ? Optional.empty()
        : byKey.values().stream()
            .filter(member -> (member.bit() & missing) != 0)
            .findFirst()
            .map(Member::key);
  }
}
