package org.isopter.model.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.isopter.model.Goldens;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Sampler;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Variant;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;
import org.junit.jupiter.api.Test;

/** The words for every finding, notation, answer, technique and absence, as they were reviewed. */
class EverySentenceTest {

  private static final OffsetDateTime NOW = OffsetDateTime.parse("2026-03-02T09:30:00+01:00");

  private static final Path GOLDEN = Path.of("src/test/resources/golden/sentences.txt");

  /** Keys, constants and Java's own words; a sign of a number is no hyphen. */
  private static final Pattern PROGRAM =
      Pattern.compile("[a-z]_[a-z]|\\b[A-Z]{2,}_|Optional|\\{|\\bnull\\b|\\[\\]| ,|,,|  |: :");

  private final Random random = new Random(20261127);
  private final Sampler sampler = new Sampler(random);

  @Test
  void readsAsItWasReviewed() throws IOException {
    List<String> lines = new ArrayList<>();
    for (Finding<?> finding : Catalogue.standard().all()) {
      lines.add(finding.title());
      sentences(finding).forEach(words -> lines.add("  " + words));
    }
    String text = String.join("\n", lines) + "\n";
    Goldens.check(GOLDEN, text);
  }

  @Test
  void usesNoWordOfAProgram() {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new Random(11));
    for (int i = 0; i < 500; i++) {
      for (Fact<?> fact : exams.next().facts()) {
        Fact<?> bare = fact.remarks(List.of()).withoutDevice();
        String words = FactText.of(bare, NOW);
        assertFalse(PROGRAM.matcher(words).find(), words);
        assertFalse(words.isBlank(), fact.toString());
      }
    }
  }

  @Test
  void saysWhyThereIsNoValueInOtherWordsForEveryReason() {
    Set<String> words = new LinkedHashSet<>();
    for (Absence reason : Absence.values()) {
      words.add(PlainWords.absence(reason));
    }
    assertEquals(Absence.values().length, words.size());
  }

  private Set<String> sentences(Finding<?> finding) {
    Set<String> sentences = new LinkedHashSet<>();
    for (Variant variant : finding.layout().variants()) {
      add(finding, variant, sentences);
    }
    finding.methods().ifPresent(all -> all.concepts().forEach(by -> add(finding, by, sentences)));
    return sentences;
  }

  private void add(Finding<?> finding, Concept technique, Set<String> into) {
    Fact<?> absent = Fact.absent(finding, finding.sites().get(0), Absence.NOT_DONE);
    into.add(FactText.of(absent.by(technique), NOW));
  }

  /** Every answer of every part of the variant turns up at least once. */
  private void add(Finding<?> finding, Variant variant, Set<String> into) {
    Map<String, Set<Concept>> wanted = new TreeMap<>();
    variant.value().ifPresent(spec -> want("", spec, wanted));
    variant.parts().forEach(part -> want(part.key(), part.spec(), wanted));
    int few = variant.notation().isPresent() || variant.parts().isEmpty() ? 1 : 6;
    for (int tries = 0; tries < 3000 && (few > 0 || !wanted.isEmpty()); tries++) {
      EncodedValue value = draw(variant);
      boolean isNew = few > 0 || meets(value, wanted);
      if (isNew && add(finding, value, into)) {
        few--;
        value.value().ifPresent(datum -> meet("", datum, wanted));
        value.parts().forEach((key, part) -> part.ifFound().ifPresent(d -> meet(key, d, wanted)));
      }
    }
    assertTrue(wanted.isEmpty(), finding + " never says " + wanted);
  }

  private static boolean add(Finding<?> finding, EncodedValue value, Set<String> into) {
    var fact = Fact.decode(finding, finding.sites().get(0), value);
    if (fact.isOk()) {
      into.add(FactText.of(fact.orThrow(), NOW));
    }
    return fact.isOk();
  }

  private static boolean meets(EncodedValue value, Map<String, Set<Concept>> wanted) {
    return value.value().filter(datum -> isWanted("", datum, wanted)).isPresent()
        || value.parts().entrySet().stream()
            .anyMatch(
                part ->
                    part.getValue()
                        .ifFound()
                        .filter(datum -> isWanted(part.getKey(), datum, wanted))
                        .isPresent());
  }

  private static void want(String key, Spec spec, Map<String, Set<Concept>> wanted) {
    if (spec instanceof Spec.Coded coded) {
      wanted.put(key, new LinkedHashSet<>(coded.answers().concepts()));
    }
  }

  private static boolean isWanted(String key, Datum datum, Map<String, Set<Concept>> wanted) {
    return datum instanceof Datum.Coded coded
        && wanted.getOrDefault(key, Set.of()).contains(coded.concept());
  }

  private static void meet(String key, Datum datum, Map<String, Set<Concept>> wanted) {
    if (isWanted(key, datum, wanted)) {
      wanted.get(key).remove(((Datum.Coded) datum).concept());
      if (wanted.get(key).isEmpty()) {
        wanted.remove(key);
      }
    }
  }

  private EncodedValue draw(Variant variant) {
    Map<String, Outcome<Datum>> parts = new LinkedHashMap<>();
    for (Part<?, ?> part : variant.parts()) {
      if (part.isRequired() || random.nextBoolean()) {
        boolean gone = part.mayBeAbsent() && random.nextInt(6) == 0;
        parts.put(
            part.key(),
            gone
                ? Outcome.absent(sampler.pick(List.of(Absence.values())))
                : Outcome.found(sampler.datum(part.spec())));
      }
    }
    return new EncodedValue(variant.notation(), variant.value().map(sampler::datum), parts);
  }
}
