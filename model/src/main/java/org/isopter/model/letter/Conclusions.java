package org.isopter.model.letter;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.derive.Derivations;
import org.isopter.model.derive.Derived;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamView;
import org.isopter.model.text.Eyes;
import org.isopter.model.text.PlainWords;

/**
 * What follows from the facts, in sentences: a statement that reads alike of both eyes is made
 * once, and always says of which eyes.
 */
final class Conclusions {

  private static final Set<String> TESTED_TOGETHER =
      Set.of(
          "acuity.equivalents",
          "acuity.partial-line",
          "acuity.unusual-line",
          "colour.plates",
          "near.equivalents");

  /**
   * The kinds of statement that are arithmetic or repeat what stands side by side: for who asks.
   */
  private static final Set<String> ARITHMETIC =
      Set.of(
          "acuity.equivalents",
          "acuity.partial-line",
          "acuity.pinhole",
          "acuity.unusual-line",
          "near.equivalents",
          "near.points",
          "near.jaeger",
          "impairment.eye",
          "impairment.near",
          "impairment.person",
          "lens.spherical-equivalent",
          "lens.power-vector",
          "lens.transposed",
          "lens.vertex",
          "lens.prism-angle",
          "disc.expected-cup",
          "disc.cup-difference",
          "field.blind-spot-width",
          "field.blind-spot-height",
          "field.blind-spot-difference",
          "colour.plates",
          "colour.red-saturation",
          "lids.difference",
          "orbit.protrusion",
          "pupils.anisocoria",
          "pupils.near-no-better");

  private final ExamView exam;
  private final List<String> sources = new ArrayList<>();
  private final List<String> sentences;
  private final List<String> brief;

  /** What a statement says, apart from the eye it says it of. */
  private record Said(String id, String text, Certainty certainty, String source, boolean both) {

    static Said of(Derived derived) {
      return new Said(
          derived.statement().id(),
          derived.statement().text(),
          derived.statement().certainty(),
          derived.statement().source().text(),
          eyes(derived) == Eyes.TOGETHER || eyes(derived) == Eyes.PAIR);
    }
  }

  private Conclusions(Exam exam) {
    this.exam = ExamView.of(exam);
    Map<Said, List<Derived>> alike = new LinkedHashMap<>();
    // What cannot be told is no news to the reader of a letter.
    Derivations.of(exam).stream()
        .filter(one -> one.statement().certainty() != Certainty.CANNOT_TELL)
        .forEach(one -> alike.computeIfAbsent(Said.of(one), any -> new ArrayList<>()).add(one));
    this.sentences =
        alike.entrySet().stream().map(one -> sentence(one.getKey(), one.getValue())).toList();
    this.brief =
        alike.entrySet().stream()
            .filter(one -> !ARITHMETIC.contains(one.getKey().id()))
            .map(one -> brief(one.getKey(), one.getValue()))
            .toList();
  }

  static Conclusions of(Exam exam) {
    return new Conclusions(exam);
  }

  /** Returns what is said of which eyes, without arithmetic, reasons and sources. */
  List<String> brief() {
    return brief;
  }

  List<String> sentences() {
    return sentences;
  }

  /** Returns the sources, in the order of their numbers. */
  List<String> sources() {
    return List.copyOf(sources);
  }

  /** Returns of whom a statement speaks. */
  private static Eyes eyes(Derived derived) {
    Eyes site = Eyes.of(derived.site());
    boolean pair = site == Eyes.TOGETHER && !TESTED_TOGETHER.contains(derived.statement().id());
    return pair ? Eyes.PAIR : site;
  }

  private static String brief(Said said, List<Derived> alike) {
    Set<Eyes> eyes = EnumSet.noneOf(Eyes.class);
    alike.forEach(one -> eyes.add(eyes(one)));
    return subject(said, Eyes.joined(eyes)) + said.text();
  }

  private String sentence(Said said, List<Derived> alike) {
    String reasons =
        PlainWords.list(
            alike.stream()
                .flatMap(one -> one.from().stream())
                .map(key -> PlainWords.lower(exam.fact(key).finding().title()))
                .distinct()
                .toList());
    return brief(said, alike)
        + " Because of the "
        + reasons
        + "; "
        + said.certainty().words()
        + " ["
        + number(said.source())
        + "].";
  }

  private static String subject(Said said, Set<Eyes> eyes) {
    if (said.id().equals("impairment.person")) {
      return "The person, by both eyes or the better one: ";
    }
    String words = eyes.stream().map(Eyes::words).collect(Collectors.joining(" and "));
    return words.isEmpty() ? "" : PlainWords.capital(words) + ": ";
  }

  private int number(String source) {
    if (!sources.contains(source)) {
      sources.add(source);
    }
    return sources.indexOf(source) + 1;
  }
}
