package org.isopter.model.finding;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** A closed list of answers with a name; it becomes one ValueSet. */
public final class Answers {

  private final String id;
  private final List<Concept> concepts;
  private final Map<String, Concept> byWord = new HashMap<>();
  private final Map<String, List<Travelling>> byCode = new HashMap<>();

  /** A concept under one of its codes; two systems may have one code for two things. */
  private record Travelling(Code code, Concept concept) {}

  private Answers(String id, List<? extends Concept> concepts) {
    this.id = id;
    this.concepts = List.copyOf(concepts);
    for (Concept concept : this.concepts) {
      if (byWord.put(concept.word(), concept) != null || !put(concept.code(), concept)) {
        throw new IllegalArgumentException(id + " lists " + concept.word() + " twice");
      }
    }
    for (Concept concept : this.concepts) {
      concept.formerCodes().forEach(code -> put(code, concept));
    }
  }

  /** Adds a concept under a code, unless another travels under it. */
  private boolean put(Code code, Concept concept) {
    List<Travelling> known = byCode.computeIfAbsent(code.code(), any -> new ArrayList<>(1));
    for (Travelling one : known) {
      if (one.code().sameAs(code)) {
        return false;
      }
    }
    return known.add(new Travelling(code, concept));
  }

  /**
   * Returns a named list.
   *
   * @throws IllegalArgumentException when a word or a code stands in it twice
   */
  public static Answers of(String id, List<? extends Concept> concepts) {
    return new Answers(id, concepts);
  }

  /** Returns the constants of an enumeration as a list named after its type. */
  public static <E extends Enum<E> & Concept> Answers of(Class<E> type) {
    return new Answers(Concept.listOf(type), Arrays.asList(type.getEnumConstants()));
  }

  /** Returns the name of the list, in lower case with hyphens. */
  public String id() {
    return id;
  }

  /** Returns the concepts in their order. */
  public List<Concept> concepts() {
    return concepts;
  }

  /** Returns the concept that a record's word names. */
  public Optional<Concept> byWord(String word) {
    return Optional.ofNullable(byWord.get(word));
  }

  /** Returns the concept that travels under a code, or did so in older versions. */
  public Optional<Concept> byCode(String system, String code) {
    for (Travelling one : byCode.getOrDefault(code, List.of())) {
      if (one.code().system().equals(system)) {
        return Optional.of(one.concept());
      }
    }
    return Optional.empty();
  }

  /** Says whether one of the concepts travels under the code. */
  public boolean has(Code code) {
    return byCode(code.system(), code.code())
        .filter(concept -> concept.code().sameAs(code))
        .isPresent();
  }

  /** Returns the words for a message: {@code one of a, b, c}. */
  public String choices() {
    return concepts.stream().map(Concept::word).collect(Collectors.joining(", ", "one of ", ""));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Answers that && id.equals(that.id) && concepts.equals(that.concepts);
  }

  @Override
  public int hashCode() {
    return id.hashCode();
  }

  @Override
  public String toString() {
    return id + concepts.stream().map(Concept::word).toList();
  }
}
