package org.isopter.mapper.foreign;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.ReadResource;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.mapper.foreign.vocabulary.ForeignRule;
import org.isopter.mapper.foreign.vocabulary.ForeignRules;
import org.isopter.mapper.json.Limits;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.catalogue.Catalogue;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * The law of conservation holds for the examples of the rules, for what others published, and for
 * random changes of both.
 */
class EveryLeafIsAccountedForTest {

  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());
  private static final long SEED = Long.getLong("seed", 20_260_302L);
  private static final List<String> VALUES =
      List.of(
          "1.50",
          "1e2",
          "-0.0",
          "0.1000",
          "true",
          "null",
          "\"\"",
          "{}",
          "[]",
          "[1,{}]",
          "7",
          "\"left eye\"",
          "\"http://loinc.org\"",
          "\"24028007\"",
          "\"\\u00b5m\"",
          "1E-400");

  @Test
  void holdsForTheExamplesOfEveryRule() {
    for (ForeignRule rule : ForeignRules.all()) {
      Conservation.check(READER, rule.id(), rule.takes().json());
      Conservation.check(READER, rule.id(), rule.refuses().json());
    }
  }

  @TestFactory
  Stream<DynamicTest> holdsForFilesInTheShapesOfOthers() {
    return Foreign.jsonFiles().stream()
        .map(
            file ->
                DynamicTest.dynamicTest(
                    file.getFileName().toString(),
                    () -> Conservation.check(READER, file.toString(), Foreign.text(file))));
  }

  @Test
  void holdsForLines() {
    for (Path file : Foreign.lineFiles()) {
      Foreign.lines(file).forEach(line -> Conservation.check(READER, line, line));
    }
  }

  @Test
  void holdsForRandomChanges() {
    Random random = new Random(SEED);
    List<String> seeds = new ArrayList<>();
    ForeignRules.all().forEach(rule -> seeds.add(rule.takes().json()));
    WhatOthersWriteTest.documents().forEach(seeds::add);
    Foreign.jsonFiles().stream().limit(40).map(Foreign::text).forEach(seeds::add);
    for (int i = 0; i < 800; i++) {
      String json = seeds.get(random.nextInt(seeds.size()));
      Raw changed = new RawJson(Limits.USUAL).read(json).orThrow();
      for (int n = random.nextInt(3); n >= 0; n--) {
        changed = change(changed, random);
      }
      Conservation.check(READER, "seed " + SEED + ", change " + i, RawJson.write(changed));
    }
  }

  /** What is taken must matter: a leaf that may be anything was not understood. */
  @Test
  void noTakenLeafIsWithoutEffect() {
    List<String> idle = new ArrayList<>();
    List<String> documents = new ArrayList<>(WhatOthersWriteTest.documents().toList());
    ForeignRules.all().forEach(rule -> documents.add(rule.takes().json()));
    for (String json : documents) {
      Raw document = new RawJson(Limits.USUAL).read(json).orThrow();
      String before = effect(json);
      for (PlacedLeaf leaf : taken(json)) {
        Raw.Leaf other = new Raw.Leaf(Raw.Kind.STRING, "Changed");
        String changed = RawJson.write(put(document, PlacedLeaf.steps(leaf.at()), other));
        if (effect(changed).equals(before)) {
          idle.add(json + " " + leaf);
        }
      }
    }
    assertEquals(List.of(), idle);
  }

  /** Returns the leaves of a document that were taken. */
  private static List<PlacedLeaf> taken(String json) {
    return READER.read(json).orThrow().resources().stream()
        .filter(read -> read.outcome() instanceof ResourceOutcome.Translated)
        .flatMap(
            read ->
                ((ResourceOutcome.Translated) read.outcome())
                    .taken().stream()
                        .map(t -> new PlacedLeaf(read.at() + t.leaf().at(), t.leaf().value())))
        .toList();
  }

  private static String effect(String json) {
    StringBuilder effect = new StringBuilder();
    Reading reading = READER.read(json).orThrow();
    for (ReadResource read : reading.resources()) {
      effect.append(read.outcome().word());
      if (read.outcome() instanceof ResourceOutcome.Translated translated) {
        effect.append(translated.facts()).append(translated.rules());
        translated.taken().forEach(taken -> effect.append(taken.leaf().at()));
      }
    }
    reading.exams().forEach(exam -> effect.append(exam.exam()));
    return effect.toString();
  }

  private static Raw change(Raw document, Random random) {
    List<PlacedLeaf> leaves = document.leaves();
    PlacedLeaf leaf = leaves.get(random.nextInt(leaves.size()));
    Raw value =
        random.nextInt(4) == 0
            ? leaves.get(random.nextInt(leaves.size())).value()
            : new RawJson(Limits.USUAL).read(VALUES.get(random.nextInt(VALUES.size()))).orThrow();
    List<String> steps = PlacedLeaf.steps(leaf.at());
    int depth = 1 + random.nextInt(Math.max(1, steps.size()));
    return put(document, steps.subList(0, Math.min(depth, steps.size())), value);
  }

  private static Raw put(Raw holder, List<String> steps, Raw value) {
    if (steps.isEmpty()) {
      return value;
    }
    List<String> rest = steps.subList(1, steps.size());
    if (holder instanceof Raw.Obj object) {
      Raw child = object.members().get(steps.get(0));
      return object.with(steps.get(0), put(child, rest, value));
    }
    List<Raw> items = new ArrayList<>(((Raw.Arr) holder).items());
    int at = Integer.parseInt(steps.get(0));
    items.set(at, put(items.get(at), rest, value));
    return Raw.of(items);
  }
}
